// The farm that `cropful page FARM` put into this page.

export function carriedFarm() {
  const element = document.getElementById("farm");
  const text = element.textContent.replaceAll("<\\/", "</");
  return text.trim() ? { name: element.dataset.name || "farm.toml", farm: text } : null;
}

/** Into an empty store it goes as it is; of one that differs from what is kept the screens ask. */
export async function takeCarried(barn) {
  const carried = carriedFarm();
  if (!carried || barn.now.farm) return;
  await barn.change(async (record) => (record.farm ? null : { ...carried, carried: carried.farm }));
}

/** Whether this page carries another farm than is kept, which nobody has decided about yet. */
export function isOther(record) {
  const carried = carriedFarm();
  return carried !== null && record.farm !== "" && carried.farm !== record.farm && carried.farm !== record.carried;
}
