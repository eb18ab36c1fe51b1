// Whose a deed is and where it is done: "April bobwhites · tank 1-4".

/** [1,2,3,5] as "1-3, 5". */
export function runs(numbers) {
  const all = [];
  for (const n of numbers) {
    const last = all.at(-1);
    if (last && last[1] === n - 1) last[1] = n;
    else all.push([n, n]);
  }
  return all.map(([a, b]) => (a === b ? `${a}` : `${a}-${b}`)).join(", ");
}

export function placeOf({ hatch, house, numbers }) {
  const where = house && (numbers.length > 0 ? `${house}\u00a0${runs(numbers)}` : house);
  return [hatch, where].filter(Boolean).join(" · ");
}
