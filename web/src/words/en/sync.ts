export const sync = {
  title: "This phone",
  entriesHere: { one: "{0} entry saved here", many: "{0} entries saved here" },
  updateWaits: "A newer Swathbook is ready. What you typed and saved stays.",
  updateTake: "Use it now",
  conflictsFound: { one: "{0} entry from another device could not simply be applied.", many: "{0} entries from other devices could not simply be applied." },
  conflictsLook: "Look at them",
};
