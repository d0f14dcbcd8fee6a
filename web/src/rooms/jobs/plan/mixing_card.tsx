// The card for the mixing site: big, one load at a time, in English and Spanish, side by side where the
// glass is wide enough. It shows the plan that was saved.
import type { JSX } from "preact";
import { useEffect, useState } from "preact/hooks";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { useSettings, type Language } from "@/app/settings";
import { ask, type Asked, type RequestOf } from "@/core/core";
import type { Load, LoadsAnswer } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import type { Thing } from "@/notebook/things";
import { RefusalNote } from "@/parts/findings";
import { catalogue, say, useWords, type Words } from "@/words/words";
import type { Measure } from "../job_data";

type Shown = Language | "both";

export function MixingCard({ job }: { job: Thing<"job"> }): JSX.Element {
  const { jobs } = useWords();
  const { language } = useSettings();
  const { value: place, set } = useForm<{ load: number; shown: Shown }>(`jobs/mixing/${job.id}`, { load: 1, shown: language });
  const plan = job.fields.plan;
  const loads = plan?.operation === "loads" ? ((plan.answer as LoadsAnswer).loads ?? []) : [];
  const load = loads[Math.min(Math.max(place.load, 1), Math.max(loads.length, 1)) - 1];
  if (plan === undefined || load === undefined) {
    return (
      <main>
        <PageHead title={jobs.mixing.title} back={address("jobs", job.id)} />
        <div class="empty">{jobs.mixing.noPlan}</div>
        <a class="button main wide" href={address("jobs", job.id, "plan")}>
          {jobs.hub.makePlan.broadcast}
        </a>
      </main>
    );
  }
  const request = plan.request as RequestOf<"loads">;
  const shown: Language[] = place.shown === "both" ? ["en", "es"] : [place.shown];
  return (
    <main>
      <PageHead title={jobs.mixing.title} back={address("jobs", job.id)} />
      <div class="language-row" role="group" aria-label={jobs.mixing.languages}>
        {(["en", "es", "both"] as const).map((one) => (
          <button key={one} type="button" class={one === place.shown ? "step-tab current" : "step-tab"} aria-pressed={one === place.shown} onClick={() => set({ shown: one })}>
            {jobs.mixing.languageNames[one]}
          </button>
        ))}
      </div>
      <div class={shown.length > 1 ? "mixing-cards both" : "mixing-cards"}>
        {shown.map((one) => (
          <OneCard key={one} language={one} job={job.fields.name} load={load} of={loads.length} request={request} />
        ))}
      </div>
      <div class="save-bar">
        <div class="save-row load-row">
          <button type="button" class="button go" disabled={load.number === 1} onClick={() => set({ load: (load.number ?? 1) - 1 })}>
            {jobs.mixing.before}
          </button>
          <button type="button" class="button go" disabled={load.number === loads.length} onClick={() => set({ load: (load.number ?? 1) + 1 })}>
            {jobs.mixing.after}
          </button>
        </div>
      </div>
    </main>
  );
}

function useCatalogue(language: Language): Words | undefined {
  const [words, setWords] = useState<Words>();
  useEffect(() => {
    void catalogue(language).then((found) => setWords(() => found));
  }, [language]);
  return words;
}

interface CardProps {
  language: Language;
  job: string;
  load: Load;
  of: number;
  request: RequestOf<"loads">;
}

function OneCard({ language, job, load, of, request }: CardProps): JSX.Element | null {
  const words = useCatalogue(language);
  if (words === undefined) return null;
  // Asked again only for its sentences in this language; the amounts on the card are those that were saved.
  const asked = ask("loads", request, language);
  return (
    <article class="mixing-card" lang={language}>
      <h2>
        <span class="mixing-job">{job}</span>
        {say(words.jobs.plan.loadNumber, load.number ?? 1, of)}
      </h2>
      {/* Before the first load one dresses; with the next ones the amounts come first. */}
      {load.number === 1 && <Before asked={asked} words={words} />}
      <RefusalNote of={asked.refusal} />
      <Remarks severity="stop" asked={asked} words={words} />
      <Amounts load={load} words={words} asked={asked} />
      <Remarks severity="warning" asked={asked} words={words} />
      {load.number !== 1 && <Before asked={asked} words={words} />}
    </article>
  );
}

function Remarks({ severity, asked, words }: { severity: "stop" | "warning"; asked: Asked<"loads">; words: Words }): JSX.Element {
  const list = asked.findings.filter((finding) => finding.severity === severity);
  return (
    <>
      {list.map(({ text }) => (
        <p key={text} class={`mixing-finding ${severity}`}>
          <strong>{words.common.severity[severity]}.</strong> {text}
        </p>
      ))}
    </>
  );
}

function Amounts({ load, words, asked }: { load: Load; words: Words; asked: Asked<"loads"> }): JSX.Element {
  const { plan, mixing } = words.jobs;
  const order = asked.answer?.order ?? [];
  const amountOf = (name: string) => (load.products ?? []).find((product) => product.name === name);
  const bestOf = (name: string) => asked.answer?.measuring?.find(({ product, first_load = 1, last_load = 1 }) => product === name && (load.number ?? 1) >= first_load && (load.number ?? 1) <= last_load)?.best;
  const placed = new Set(order.flatMap(({ products }) => products ?? []));
  const unplaced = (load.products ?? []).filter(({ name }) => !placed.has(name ?? ""));
  const line = (name: string) => {
    const product = amountOf(name);
    const best = bestOf(name);
    return (
      <li key={name} class="mixing-product">
        <span class="mixing-amount">{(product?.amount as Measure | undefined)?.text}</span>
        <span class="mixing-name">{name}</span>
        {best && (
          <span class="mixing-measure">
            {best.tool}: {best.text}
          </span>
        )}
        {product?.jugs_emptied ? <span class="mixing-measure">{say(mixing.rinseJugs, product.jugs_emptied)}</span> : null}
      </li>
    );
  };
  return (
    <>
      <dl class="mixing-fill">
        <div>
          <dt>{plan.fill}</dt>
          <dd>{show(load.fill)}</dd>
        </div>
        <div>
          <dt>{plan.carrier}</dt>
          <dd>{show(load.carrier)}</dd>
        </div>
        {typeof load.rinse_water === "object" && load.rinse_water.value > 0 && (
          <div>
            <dt>{plan.rinseWater}</dt>
            <dd>{show(load.rinse_water)}</dd>
          </div>
        )}
      </dl>
      <ol class="mixing-order">
        {order.map((step) => (
          <li key={step.number}>
            <p>{step.text}</p>
            {(step.products?.length ?? 0) > 0 && <ul>{step.products?.map(line)}</ul>}
          </li>
        ))}
        {unplaced.length > 0 && (
          <li>
            <p>{mixing.asLabel}</p>
            <ul>{unplaced.map(({ name }) => line(name ?? ""))}</ul>
          </li>
        )}
      </ol>
    </>
  );
}

function Before({ asked, words }: { asked: Asked<"loads">; words: Words }): JSX.Element {
  const { mixing } = words.jobs;
  return (
    <div class="caution">
      <h3>{mixing.first}</h3>
      <ul class="cautions">
        {(asked.answer?.cautions ?? []).map((text) => (
          <li key={text}>{text}</li>
        ))}
        {mixing.cautions.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <p>{words.common.labelIsLaw}</p>
    </div>
  );
}
