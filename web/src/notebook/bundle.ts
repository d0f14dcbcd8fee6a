// A bundle carries a notebook from one device to another as one file: a zip of the entries as travelling
// text, the attachments under their digests, and a manifest with the digest of each part. Bringing the
// same bundle in twice changes nothing.
import { strFromU8, strToU8, unzip, zip, type Zippable } from "fflate";
import { module } from "@/core/core";
import { withDatabase } from "./database";
import { allEntries, keepForeignBlob, merge, state, deviceId, type Merged } from "./notebook";

const form = "swathbook bundle 1";

interface Manifest {
  form: string;
  made: string;
  device: string;
  entries: number;
  /** Digest of the state that the entries amount to on the device that made it. */
  state: string;
  parts: Array<{ name: string; digest: string; size: number; type?: string }>;
}

/** Everything on this phone as one file. */
export async function makeBundle(): Promise<File> {
  const entries = strToU8(await allEntries());
  const blobs = await withDatabase((open) => open.getAll("blobs"));
  const { entries: count, digest } = state();
  const files: Zippable = { "entries.txt": entries };
  const parts: Manifest["parts"] = [{ name: "entries.txt", digest: module().digest(entries), size: entries.length }];
  for (const { digest: name, bytes, type } of blobs) {
    files[`blobs/${name}`] = [new Uint8Array(bytes), { level: /^(image|video)/.test(type) ? 0 : 6 }];
    parts.push({ name: `blobs/${name}`, digest: name, size: bytes.byteLength, type });
  }
  const manifest: Manifest = { form, made: new Date().toISOString(), device: deviceId(), entries: count, state: digest, parts };
  files["manifest.json"] = strToU8(JSON.stringify(manifest, null, 1));
  const bytes = await new Promise<Uint8Array>((resolve, reject) => zip(files, (error, made) => (error ? reject(error) : resolve(made))));
  const day = new Date().toISOString().slice(0, 10);
  return new File([bytes as BlobPart], `swathbook-${day}-${deviceId().slice(-4)}.zip`, { type: "application/zip" });
}

/** Why a file was not taken in; nothing of it was. */
export class BundleError extends Error {
  constructor(
    readonly reason: "not_a_bundle" | "damaged" | "newer",
    readonly part = "",
  ) {
    super(`${reason} ${part}`);
  }
}

/**
 * Takes a bundle in, or the text that `swathbook notebook export` writes.
 * @throws BundleError when the file is something else or is damaged: nothing was taken in then
 */
export async function takeBundle(file: Blob): Promise<Merged & { blobs: number }> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const isText = strFromU8(bytes.subarray(0, 17), true) === "swathbook entry 1";
  if (isText) return { ...(await merge(strFromU8(bytes))), blobs: 0 };
  const files = await unzipped(bytes);
  const manifest = manifestOf(files);
  for (const { name, digest } of manifest.parts) {
    const part = files[name];
    if (part === undefined || module().digest(part) !== digest) throw new BundleError("damaged", name);
  }
  // Attachments first: an entry never names one that is not here.
  let blobs = 0;
  for (const { name, digest, type } of manifest.parts) {
    const part = files[name];
    if (part !== undefined && name.startsWith("blobs/")) blobs += (await keepForeignBlob(digest, part, type ?? "")) ? 1 : 0;
  }
  const text = strFromU8(files["entries.txt"] ?? new Uint8Array());
  return { ...(await merge(text)), blobs };
}

async function unzipped(bytes: Uint8Array): Promise<Record<string, Uint8Array>> {
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) throw new BundleError("not_a_bundle");
  return new Promise((resolve, reject) => unzip(bytes, (error, files) => (error ? reject(new BundleError("damaged")) : resolve(files))));
}

function manifestOf(files: Record<string, Uint8Array>): Manifest {
  const text = files["manifest.json"];
  if (text === undefined) throw new BundleError("not_a_bundle");
  let manifest: Manifest;
  try {
    manifest = JSON.parse(strFromU8(text)) as Manifest;
  } catch {
    throw new BundleError("damaged", "manifest.json");
  }
  if (typeof manifest.form !== "string" || !manifest.form.startsWith("swathbook bundle")) throw new BundleError("not_a_bundle");
  if (manifest.form !== form) throw new BundleError("newer", manifest.form);
  if (!Array.isArray(manifest.parts)) throw new BundleError("damaged", "manifest.json");
  return manifest;
}
