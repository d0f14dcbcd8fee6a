// The three ways to reach a target, each with the number to set and how it lies in the window entered.
import type { ComponentChildren, JSX } from "preact";
import type { Asked } from "@/core/core";
import type { ByPressure, InWindow, SizeAtPressure } from "@/core/operations.gen";
import { settings } from "@/app/settings";
import { show } from "@/core/quantity";
import { Figure } from "@/parts/answer";
import { Section } from "@/parts/list";
import { say, useWords } from "@/words/words";

export function AdjustPart({ of }: { of: Asked<"adjust"> }): JSX.Element | null {
  const words = useWords().sprayers.target;
  const { answer } = of;
  if (answer === undefined) return null;
  const sizes = settings.now().units === "us" ? answer.by_tip?.us_sizes : answer.by_tip?.iso_sizes;
  return (
    <>
      <Way title={words.bySpeed} hint={words.bySpeedHint} window={answer.by_speed?.window}>
        <Figure size="main" label={words.bySpeed} of={of} value={answer.by_speed?.speed} />
      </Way>
      {answer.by_pressure ? (
        <Way title={words.byPressure} hint={words.byPressureHint} window={answer.by_pressure.window}>
          <Figure size="main" label={words.byPressure} of={of} value={answer.by_pressure.pressure} />
          <Figure label={words.factor} of={of} value={answer.by_pressure.factor} />
          <Droplets of={answer.by_pressure} />
        </Way>
      ) : (
        <Section title={words.byPressure}>
          <p class="empty">{words.needPressure}</p>
        </Section>
      )}
      {answer.by_tip ? (
        <Way title={words.byTips} hint={words.byTipsHint}>
          <Figure size="main" label={words.byTips} of={of} value={answer.by_tip.flow} />
          {sizes && sizes.length > 0 && <Sizes of={sizes} />}
        </Way>
      ) : (
        <Section title={words.byTips}>
          <p class="empty">{words.needWidth}</p>
        </Section>
      )}
      {answer.at_speeds && answer.at_speeds.length > 0 && (
        <Section title={words.swings}>
          <p class="hint">{words.swingsHint}</p>
          <div class="figures">
            {answer.at_speeds.map(({ speed, rate }) => (
              <Figure key={show(speed)} label={say(words.atSpeed, show(speed))} of={of} value={rate} />
            ))}
            {answer.at_speeds.length > 1 && (
              <>
                <Figure label={words.meanDistance} of={of} value={answer.rate_equal_distance} />
                <Figure label={words.meanSpeed} of={of} value={answer.speed_equal_distance} />
              </>
            )}
          </div>
        </Section>
      )}
      {answer.controller_slowest && (
        <Section title={words.controller}>
          <div class="figures">
            <Figure label={words.slowest} of={of} value={answer.controller_slowest} />
            <Figure label={words.fastest} of={of} value={answer.controller_fastest} />
          </div>
        </Section>
      )}
    </>
  );
}

function Way({ title, hint, window, children }: { title: string; hint: string; window?: InWindow | undefined; children: ComponentChildren }): JSX.Element {
  return (
    <Section title={title}>
      <p class="hint">{hint}</p>
      <div class="figures">{children}</div>
      {window && <WindowWord of={window} />}
    </Section>
  );
}

function WindowWord({ of }: { of: InWindow }): JSX.Element {
  const words = useWords().sprayers.target;
  return <p class={`window ${of}`}>{words.windows[of]}</p>;
}

function Droplets({ of }: { of: ByPressure }): JSX.Element | null {
  const words = useWords().sprayers.target;
  const { class_now: now, class_then: then, class_allowed: allowed } = of;
  if (now === undefined && then === undefined) return null;
  const name = (value: typeof now) => (value === undefined ? "?" : words.classNames[value]);
  return (
    <div class="droplets">
      <h3>{words.droplet}</h3>
      <p>
        {say(words.dropletChange, name(now), name(then))}
        {allowed !== undefined && <strong>. {allowed ? words.dropletYes : words.dropletNo}</strong>}
      </p>
    </div>
  );
}

function Sizes({ of }: { of: SizeAtPressure[] }): JSX.Element {
  const words = useWords().sprayers.target;
  return (
    <div class="table-wide sizes">
      <table class="table">
        <caption>{words.sizes}</caption>
        <tbody>
          {of.map(({ size, colour, pressure, window }) => (
            <tr key={size}>
              <th scope="row">
                {size} <small>{colour}</small>
              </th>
              <td class="number">{show(pressure)}</td>
              <td>{window && words.windows[window]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
