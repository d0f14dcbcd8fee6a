// What the web face asks of wasm/swathbook.mjs.
declare module "@wasm/swathbook.mjs" {
  export interface Swathbook {
    /** An operation's answer, the exact bytes every face gives. */
    callText(operation: string, request: string): { ok: boolean; json: string };
    /** An act of the notebook (wasm/book.cpp). @throws SwathbookError when it was refused */
    book(act: string, request: object): unknown;
    /** BLAKE2b-256 of bytes, 64 hexadecimal digits. */
    digest(bytes: Uint8Array): string;
    /** Gives the core the sentences of another language. */
    loadLanguage(text: string): void;
    /** Counts restarts after a fault; the notebook in the module is empty after one. */
    readonly epoch: number;
    memoryBytes(): number;
  }
  export class SwathbookError extends Error {
    readonly code: string;
    readonly field?: string;
    readonly detail: string;
  }
  export function open(source: URL | string | ArrayBuffer | Uint8Array | WebAssembly.Module): Promise<Swathbook>;
}
