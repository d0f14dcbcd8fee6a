// Several people, several paces, one recipe: what the crew puts out together, and who breaks which limit.
import type { JSX } from "preact";
import { PageHead } from "@/app/page_head";
import { address } from "@/app/route";
import { ask, type Asked, type RequestOf } from "@/core/core";
import type { CrewAnswer, CrewLimit, CrewMember, CrewSharing, Quantity } from "@/core/operations.gen";
import { show } from "@/core/quantity";
import { useForm } from "@/notebook/forms";
import { useThings } from "@/notebook/notebook";
import type { Thing } from "@/notebook/things";
import { AmountField, unitsOf } from "@/parts/amount_field";
import { Figure, WorkingButton } from "@/parts/answer";
import { Choice, TextField } from "@/parts/fields";
import { Findings, RefusalNote } from "@/parts/findings";
import { Section } from "@/parts/list";
import { SaveBar, useSaving } from "@/parts/save_bar";
import { say, useWords } from "@/words/words";
import { asTyped, calibrationsOf, cardsOf, errorAt, keep, rateText } from "../job_data";
import { NotEntered } from "../plan/limits";
import { FormNotices } from "../steps";

interface CrewForm {
  people: Array<{ name: string; output: string }>;
  sharing: CrewSharing;
  product_rate: string;
  product_min: string;
  product_max: string;
  carrier_min: string;
  carrier_max: string;
  tank: string;
}

export function CrewPage({ job }: { job?: Thing<"job"> }): JSX.Element {
  const { common, jobs } = useWords();
  const first = useFirst(job);
  const { value: form, set, clear, resumed } = useForm<CrewForm>(`jobs/crew/${job?.id ?? "alone"}`, first);
  const saving = useSaving();
  const people = form.people.filter(({ output }) => output !== "");
  const asked = ask("crew", { ...form, people } as RequestOf<"crew">);
  const crew = keep(job?.fields.name ?? "", asked);
  const change = (at: number, part: Partial<CrewForm["people"][number]>) => set({ people: form.people.map((one, index) => (index === at ? { ...one, ...part } : one)) });
  const save = async () => {
    if (job === undefined || crew === undefined) return;
    if (await saving.save([{ kind: "job", subject: job.id, body: { crew, mix_per_area: asTyped(crew.answer.crew_rate), calibration: null } }])) clear();
  };
  const amount = (name: "product_rate" | "product_min" | "product_max") => ({ value: form[name], units: unitsOf.rate, error: errorAt(asked, name, form[name]), onValue: (text: string) => set({ [name]: text }) });
  const carrier = (name: "carrier_min" | "carrier_max") => ({ value: form[name], units: unitsOf.mixPerArea, error: errorAt(asked, name, form[name]), onValue: (text: string) => set({ [name]: text }) });
  return (
    <main>
      <PageHead title={jobs.crew.title} back={job ? address("jobs", job.id) : address("jobs", "tools")} />
      {job && <p class="job-name">{job.fields.name}</p>}
      <FormNotices resumed={resumed} onClear={clear} />
      <Section title={jobs.crew.people}>
        {form.people.map((one, index) => (
          <fieldset key={index} class="product">
            <legend>{one.name || say(jobs.crew.person, index + 1)}</legend>
            <div class="two">
              <TextField label={common.name} value={one.name} onValue={(name) => change(index, { name })} />
              <AmountField
                label={jobs.crew.output}
                units={unitsOf.mixPerArea}
                value={one.output}
                error={errorAt(asked, `people[${people.indexOf(one)}].output`, one.output)}
                onValue={(output) => change(index, { output })}
              />
            </div>
            <button type="button" class="button quiet" onClick={() => set({ people: form.people.filter((_, other) => other !== index) })}>
              {common.remove} {one.name}
            </button>
          </fieldset>
        ))}
        <button type="button" class="button wide" onClick={() => set({ people: [...form.people, { name: "", output: "" }] })}>
          {jobs.crew.addPerson}
        </button>
        <Choice label={jobs.crew.sharing} value={form.sharing} options={(["equal_flow", "equal_area", "own_tanks"] as const).map((value) => ({ value, label: jobs.crew.sharings[value] }))} onValue={(sharing) => set({ sharing })} />
      </Section>
      <Section title={jobs.crew.label}>
        <p class="hint">{jobs.crew.labelHint}</p>
        <div class="two">
          <AmountField label={jobs.crew.rate} required={false} {...amount("product_rate")} />
          <AmountField label={jobs.limits.min_single_rate} required={false} {...amount("product_min")} />
          <AmountField label={jobs.limits.max_single_rate} required={false} {...amount("product_max")} />
          <AmountField label={jobs.limits.min_carrier} required={false} {...carrier("carrier_min")} />
          <AmountField label={jobs.limits.max_carrier} required={false} {...carrier("carrier_max")} />
          <AmountField label={jobs.crew.tank} required={false} units={unitsOf.tank} value={form.tank} error={errorAt(asked, "tank", form.tank)} onValue={(tank) => set({ tank })} />
        </div>
      </Section>
      {people.length > 0 && <CrewAnswerView asked={asked} />}
      {job && <SaveBar saving={saving} label={jobs.crew.save} disabled={crew?.answer.crew_rate === undefined} onSave={() => void save()} />}
    </main>
  );
}

/** The people of the job, or everyone known, each with their newest calibration; the first product's label. */
function useFirst(job: Thing<"job"> | undefined): CrewForm {
  const operators = useThings("operator");
  const calibrations = useThings("calibration");
  const cards = useThings("product_card");
  const chosen = operators.filter(({ id }) => job?.fields.operators?.includes(id));
  const people = (chosen.length > 0 ? chosen : operators).map(({ id, fields }) => {
    const [newest] = calibrationsOf(calibrations, (kept) => kept.fields.operator !== undefined && (kept.fields.operator === id || kept.fields.operator === fields.name));
    return { name: fields.name ?? "", output: asTyped(newest?.fields.answer.output) };
  });
  const product = job?.fields.products?.[0];
  const limits = product && cardsOf(cards, job?.fields)(product)?.limits;
  return {
    people: people.length > 0 ? people : [{ name: "", output: "" }],
    sharing: "equal_flow",
    product_rate: rateText(product?.rate),
    product_min: rateText(limits?.min_single_rate?.value),
    product_max: rateText(limits?.max_single_rate?.value),
    carrier_min: asTyped(limits?.min_carrier?.value),
    carrier_max: asTyped(limits?.max_carrier?.value),
    tank: "",
  };
}

function CrewAnswerView({ asked }: { asked: Asked<"crew"> }): JSX.Element {
  const { jobs } = useWords();
  const answer = asked.answer;
  return (
    <section class="plan-answer">
      <h2 class="answer-title">{jobs.crew.answer}</h2>
      <RefusalNote of={asked.refusal} />
      {answer && (
        <>
          <Findings of={asked.findings} />
          <div class="figures">
            <Figure label={jobs.crew.crewRate} of={asked} value={answer.crew_rate} size="main" note={jobs.crew.crewRateNote} />
            <Figure label={jobs.crew.ratio} of={asked} value={answer.ratio_needed} />
            <Figure label={jobs.crew.ratioOfLabel} of={asked} value={answer.ratio_of_label} />
            <Figure label={jobs.crew.mean} of={asked} value={answer.arithmetic_mean} />
          </div>
          <WorkingButton of={asked} title={jobs.crew.title} />
          <ul class="checks">
            {(answer.people ?? []).map((person, index) => (
              <Person key={index} person={person} />
            ))}
          </ul>
          <NotEntered names={missingLimits(answer)} />
          {(answer.recipes?.length ?? 0) > 1 && <h3>{jobs.crew.recipes}</h3>}
          {(answer.recipes?.length ?? 0) > 1 &&
            answer.recipes?.map((group, index) => (
              <p key={index} class="measure fits">
                {say(jobs.crew.recipe, (group.people ?? []).join(", "), show(group.mixed_for))}
              </p>
            ))}
        </>
      )}
    </section>
  );
}

const signed = (share: Quantity): string => (typeof share === "object" && share.value > 0 ? `+${show(share)}` : show(share));

/** Limits that nobody typed, so that nobody was held against them. */
function missingLimits({ people = [] }: CrewAnswer): string[] {
  const members = { min_single_rate: "product_low", max_single_rate: "product_high", min_carrier: "carrier_low", max_carrier: "carrier_high" } as const;
  return Object.entries(members).flatMap(([name, member]) => (people.some((person) => person[member] === "not_entered") ? [name] : []));
}

function Person({ person }: { person: CrewMember }): JSX.Element {
  const { jobs } = useWords();
  const limits: Array<[string, CrewLimit | undefined]> = [
    [jobs.limits.min_single_rate, person.product_low],
    [jobs.limits.max_single_rate, person.product_high],
    [jobs.limits.min_carrier, person.carrier_low],
    [jobs.limits.max_carrier, person.carrier_high],
  ];
  const broken = limits.filter(([, limit]) => limit === "under" || limit === "over");
  const delivered = typeof person.delivered === "object" ? show(person.delivered) : person.delivered;
  return (
    <li class={broken.length > 0 ? "check above" : "check within"}>
      <span class={broken.length > 0 ? "check-bad" : "check-ok"} aria-hidden="true" />
      <div>
        <strong>
          {person.name}: {show(person.output)}
        </strong>
        <p>
          {[person.from_crew && say(jobs.crew.fromCrew, signed(person.from_crew)), delivered && say(jobs.crew.putsOn, delivered)].filter(Boolean).join(" · ")}
          {limits.map(([name, limit]) => limit && limit !== "not_entered" && <small key={name}>{`${name}: ${jobs.crew.limits[limit]}`}</small>)}
        </p>
      </div>
    </li>
  );
}
