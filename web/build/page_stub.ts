// What modules look at when they are loaded, for unit tests outside a browser: an English phone.
const page = globalThis as unknown as Record<string, unknown>;
page["navigator"] ??= { language: "en-US" };
page["location"] ??= { hash: "", href: "http://localhost/" };
page["addEventListener"] ??= () => undefined;
