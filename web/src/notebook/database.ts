// The phone's own store: entries, attachments, half-filled forms. Nothing in it is ever altered but the
// forms and the marks of what a server has acknowledged.
import { deleteDB, openDB, type DBSchema, type IDBPDatabase } from "idb";

export interface EntryRow {
  /** Given by the database in order of arrival; the cursor of this phone. */
  number?: number;
  id: string;
  device: string;
  kind: string;
  subject: string;
  /** The travelling text of the entry, hash and all. */
  text: string;
}

interface Schema extends DBSchema {
  entries: { key: number; value: EntryRow; indexes: { id: string; subject: string } };
  blobs: { key: string; value: { digest: string; type: string; bytes: ArrayBuffer } };
  /** Entry ids and blob digests that a server has not acknowledged yet. */
  unsent: { key: string; value: { key: string; what: "entry" | "blob" } };
  forms: { key: string; value: { key: string; value: unknown; at: number } };
  facts: { key: string; value: { key: string; value: unknown } };
}

export type Database = IDBPDatabase<Schema>;
export const databaseName = "swathbook";

let connection: Promise<Database> | undefined;

/** The open database. A connection that the system closed (phones do, in the background) is opened again. */
export function database(): Promise<Database> {
  connection ??= openDB<Schema>(databaseName, 1, {
    upgrade(fresh) {
      const entries = fresh.createObjectStore("entries", { keyPath: "number", autoIncrement: true });
      entries.createIndex("id", "id", { unique: true });
      entries.createIndex("subject", "subject");
      fresh.createObjectStore("blobs", { keyPath: "digest" });
      fresh.createObjectStore("unsent", { keyPath: "key" });
      fresh.createObjectStore("forms", { keyPath: "key" });
      fresh.createObjectStore("facts", { keyPath: "key" });
    },
    blocking() {
      // A newer version of the app waits in another tab: let it have the database.
      void connection?.then((open) => open.close());
      connection = undefined;
    },
    terminated() {
      connection = undefined;
    },
  });
  connection.catch(() => (connection = undefined));
  return connection;
}

/** Runs `work`; once more on a fresh connection when the first was lost under it. */
export async function withDatabase<T>(work: (open: Database) => Promise<T>): Promise<T> {
  try {
    return await work(await database());
  } catch (error) {
    if (!isLostConnection(error)) throw error;
    connection = undefined;
    return work(await database());
  }
}

function isLostConnection(error: unknown): boolean {
  return error instanceof DOMException && (error.name === "InvalidStateError" || /connection/i.test(error.message));
}

export function isFull(error: unknown): boolean {
  return error instanceof DOMException && error.name === "QuotaExceededError";
}

export async function fact<T>(key: string): Promise<T | undefined> {
  return (await withDatabase((open) => open.get("facts", key)))?.value as T | undefined;
}

export async function setFact(key: string, value: unknown): Promise<void> {
  await withDatabase((open) => open.put("facts", { key, value }));
}

/** For tests and "begin again": everything on this phone, gone. */
export async function deleteEverything(): Promise<void> {
  (await connection?.catch(() => undefined))?.close();
  connection = undefined;
  await deleteDB(databaseName);
}
