// With `swathbook serve` behind the page, entries and attachments travel both ways. Without one, nothing
// is missing: the notebook is whole on this phone.
export const startSync = {
  /** The token of this run of the server comes in the address once; it is kept for this tab alone. */
  rememberToken(): void {
    const found = /[#&]token=([^&]+)/.exec(location.hash);
    if (!found) return;
    sessionStorage.setItem("swathbook token", found[1] ?? "");
    history.replaceState(null, "", location.pathname + location.search);
  },
  begin(): void {},
};
