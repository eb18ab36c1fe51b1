// The browser's own store: one record with the farm's text, its diary and a version that each change counts up.
import { openDB } from "idb";

/** Of records written by this page; a record of an earlier number is brought up to it, a later one is left alone. */
export const SCHEMA = 1;
const DATABASE = "cropful", TABLE = "barns", KEY = "barn";

/** Somebody else saved meanwhile: `fresh` is what is there now. */
export class Stale extends Error {
  constructor(fresh) {
    super("another tab has saved");
    this.fresh = fresh;
  }
}

/** A record that a newer page has written. */
export class Newer extends Error {}

export const EMPTY = {
  schema: SCHEMA,
  version: 0,
  name: "farm.toml", // of the farm file, as it goes out
  farm: "", // its text; empty: no farm yet
  draft: null, // its text while it has faults
  diary: null, // bytes of the diary, which is a SQLite file
  ticked: [], // deeds of the day that were ticked here, with the entries that a tick wrote
  carried: null, // the farm that a page brought with it when it was last looked at
};

function upToDate(record) {
  if (!record) return EMPTY;
  if (record.schema > SCHEMA) throw new Newer();
  return { ...EMPTY, ...record, schema: SCHEMA };
}

export async function openStore() {
  const database = await openDB(DATABASE, 1, {
    upgrade: (fresh) => fresh.createObjectStore(TABLE),
    blocking: (_current, _blocked, event) => event.target.close(),
  });
  const channel = new BroadcastChannel(DATABASE);
  return {
    read: async () => upToDate(await database.get(TABLE, KEY)),

    /** Saves where the version is still that of `record`; the record as saved, or Stale. */
    async save(record) {
      const change = database.transaction(TABLE, "readwrite", { durability: "strict" });
      const done = change.done;
      try {
        const there = upToDate(await change.store.get(KEY));
        if (there.version !== record.version) throw new Stale(there);
        const saved = { ...record, version: record.version + 1 };
        await change.store.put(saved, KEY);
        await done;
        channel.postMessage(saved.version);
        return saved;
      } catch (trouble) {
        done.catch(() => {});
        try {
          change.abort();
        } catch {
          // it has ended already
        }
        throw trouble;
      }
    },

    whenSavedElsewhere: (tell) => (channel.onmessage = ({ data }) => tell(data)),
  };
}
