// A class that was saved: its figures and what came of them, as a file attached to the notebook.
import type { Asked } from "@/core/core";
import { model } from "@/core/version";
import { blob } from "@/notebook/notebook";
import type { ClassForm } from "./class_form";

export const classType = "application/vnd.swathbook.class+json";

export interface KeptClass {
  form: ClassForm;
  asked: Asked<"learners">;
  model: string;
}

export const bytesOf = (form: ClassForm, asked: Asked<"learners">): ArrayBuffer => new TextEncoder().encode(JSON.stringify({ form, asked, model } satisfies KeptClass)).buffer as ArrayBuffer;

/** Undefined when the file is not on this phone. */
export async function keptClass(digest: string): Promise<KeptClass | undefined> {
  const found = await blob(digest);
  return found && (JSON.parse(new TextDecoder().decode(found.bytes)) as KeptClass);
}
