// Limits as they stand: what the job delivers beside what each label allows, and the strictest of all
// labels. What nobody typed is named too.
import type { JSX } from "preact";
import type { LimitCheck, ProductTotal, StrictestLimits } from "@/core/operations.gen";
import { Section } from "@/parts/list";
import { Sign } from "@/parts/findings";
import { say, useWords, type Words } from "@/words/words";

const signs = { within: undefined, above: "stop", below: "stop", not_entered: "note", cannot_tell: "warning" } as const;

export const limitName = (limits: Words["jobs"]["limits"], name: string | undefined): string => (limits as Record<string, string>)[name ?? ""] ?? name ?? "";

export function LimitChecks({ products }: { products: Array<Pick<ProductTotal, "name" | "limits" | "not_entered">> }): JSX.Element | null {
  const { jobs } = useWords();
  const shown = products.filter(({ limits, not_entered }) => (limits?.length ?? 0) > 0 || (not_entered?.length ?? 0) > 0);
  if (shown.length === 0) return null;
  return (
    <Section title={jobs.plan.limits}>
      {shown.map((product, index) => (
        <div key={index} class="product-limits">
          <h3>{product.name}</h3>
          <CheckList checks={(product.limits ?? []).filter(({ status }) => status !== "not_entered")} />
          <NotEntered names={product.not_entered ?? (product.limits ?? []).filter(({ status }) => status === "not_entered").map(({ limit }) => limit ?? "")} />
        </div>
      ))}
    </Section>
  );
}

export function CheckList({ checks }: { checks: LimitCheck[] }): JSX.Element | null {
  const { jobs } = useWords();
  if (checks.length === 0) return null;
  return (
    <ul class="checks">
      {checks.map((check, index) => {
        const status = check.status ?? "cannot_tell";
        const sign = signs[status];
        return (
          <li key={index} class={`check ${status}`}>
            {sign ? <Sign severity={sign} /> : <span class="check-ok" aria-hidden="true" />}
            <div>
              <strong>
                {limitName(jobs.limits, check.limit)}: {jobs.plan.statuses[status]}
              </strong>
              <p>
                {[check.delivered && say(jobs.plan.delivered, check.delivered), check.allowed && say(jobs.plan.allowed, check.allowed), check.where].filter(Boolean).join(" · ")}
                {check.why && <small>{check.why}</small>}
              </p>
            </div>
          </li>
        );
      })}
    </ul>
  );
}

export function NotEntered({ names }: { names: string[] }): JSX.Element | null {
  const { jobs } = useWords();
  if (names.length === 0) return null;
  return (
    <p class="not-entered">
      <strong>{jobs.plan.notEnteredTitle}</strong> {names.map((name) => limitName(jobs.limits, name)).join(", ")}.
    </p>
  );
}

export function StrictestTable({ strictest }: { strictest: StrictestLimits | undefined }): JSX.Element | null {
  const { jobs } = useWords();
  if (strictest === undefined) return null;
  const all = Object.entries(strictest) as Array<[string, { text?: string; until_dry?: boolean; product?: string; where?: string; not_entered_by?: string[] }]>;
  const rows = all.filter(([, limit]) => limit.text || limit.until_dry);
  const missing = all.filter(([, limit]) => !limit.text && !limit.until_dry).map(([name]) => name);
  return (
    <Section title={jobs.plan.strictest}>
      <p class="hint">{jobs.plan.strictestHint}</p>
      <dl class="values limits-read">
        {rows.map(([name, limit]) => {
          const dry = limit.until_dry ? jobs.cards.untilDry : "";
          const unknown = limit.not_entered_by ?? [];
          return (
            <div key={name}>
              <dt>{limitName(jobs.limits, name)}</dt>
              <dd>
                {[droplets(jobs, limit.text), dry].filter(Boolean).join("; ")}
                <small>{[limit.product, limit.where].filter(Boolean).join(", ")}</small>
                {unknown.length > 0 && <small>{say(jobs.plan.notEnteredBy, unknown.join(", "))}</small>}
              </dd>
            </div>
          );
        })}
      </dl>
      <NotEntered names={missing} />
    </Section>
  );
}

const droplets = (jobs: Words["jobs"], text: string | undefined): string => (jobs.cards.droplets as Record<string, string>)[text ?? ""] ?? text ?? "";
