// With `swathbook serve` behind the page, its printing program makes the PDF.
import type { Refusal } from "@/core/core";
import type { Order } from "./order";

export class PaperError extends Error {
  constructor(
    readonly reason: "away" | "locked" | "refused",
    readonly refusal?: Refusal,
  ) {
    super(refusal?.detail ?? reason);
  }
}

/** True when a server answers behind this page. */
export async function deskAnswers(): Promise<boolean> {
  const answer = await fetch("./api/health", { cache: "no-store" }).catch(() => undefined);
  return answer?.ok === true && (answer.headers.get("content-type") ?? "").includes("json");
}

/** @throws PaperError */
export async function pdfFromDesk(order: Order, name: string): Promise<File> {
  const answer = await fetch(`./api/${order.sheet}`, {
    method: "POST",
    headers: { "Content-Type": "application/json", "X-Swathbook-Token": sessionStorage.getItem("swathbook token") ?? "" },
    body: JSON.stringify(order),
    cache: "no-store",
  }).catch(() => {
    throw new PaperError("away");
  });
  if (answer.status === 401 || answer.status === 403) throw new PaperError("locked");
  const type = answer.headers.get("content-type") ?? "";
  if (answer.ok && type.includes("pdf")) return new File([await answer.blob()], `${name}.pdf`, { type: "application/pdf" });
  const { error } = (type.includes("json") ? await answer.json() : {}) as { error?: Refusal };
  throw error ? new PaperError("refused", error) : new PaperError("away");
}
