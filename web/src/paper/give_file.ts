// Hands a file to the person: to the phone's share sheet, or as a download.
export function giveFile(file: File): void {
  const place = URL.createObjectURL(file);
  const link = document.createElement("a");
  link.href = place;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(place), 60_000);
}

export const canShare = (file: File): boolean => typeof navigator.canShare === "function" && navigator.canShare({ files: [file] });

/** Opens the share sheet; the person may close it again, which is no fault. */
export async function shareFile(file: File): Promise<void> {
  await navigator.share({ files: [file], title: file.name }).catch(() => undefined);
}
