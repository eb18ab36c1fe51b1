// The farm that `cropful page FARM` put into this page, and its diary, both in base64.

function bytesIn(id) {
  return Uint8Array.from(atob(document.getElementById(id).textContent.trim()), (c) => c.charCodeAt(0));
}

/** A diary that is not there is null, as in an empty store. */
export function carriedFarm() {
  const farm = new TextDecoder().decode(bytesIn("farm"));
  const diary = bytesIn("diary");
  const { name } = document.getElementById("farm").dataset;
  return farm ? { name: name || "farm.toml", farm, diary: diary.length > 0 ? diary : null } : null;
}

/**
 * Into an empty store it goes as it is, but not again once it was taken off; of one that differs from what is kept the
 * screens ask. It is shown at once: the page holds it until it is saved.
 */
export function takeCarried(barn) {
  const carried = carriedFarm();
  const isTaken = (record) => record.farm !== "" || record.carried === carried.farm;
  if (!carried || isTaken(barn.now)) return;
  const taken = { ...carried, carried: carried.farm };
  const shown = { ...barn.now, ...taken }; // not saved yet, unlike a record that another tab has saved
  barn.change(async (record) => (record !== shown && isTaken(record) ? null : taken));
  barn.now = shown;
}

/** Whether this page carries another farm than is kept, which nobody has decided about yet. */
export function isOther(record) {
  const carried = carriedFarm();
  return carried !== null && record.farm !== "" && carried.farm !== record.farm && carried.farm !== record.carried;
}
