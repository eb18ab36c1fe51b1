// The farm as this page knows it: what is kept, how it changes, and who is told. Changes come one after the other; each
// is saved before anybody is told of it.
import { EMPTY, Newer, openStore, Stale } from "./store.js";

export const NOT_KEPT = {
  refused: "This browser keeps nothing for this page. What you tick is lost when it is closed: take the farm and its diary out as files (Farm).",
  full: "This phone has no room left: the last change is not kept. Take the farm and its diary out as files (Farm), and make room.",
  newer: "A newer page has written what is kept here. Open that page; this one leaves it as it is.",
};

const troubleOf = (error) =>
  error instanceof Newer ? "newer" : error.name === "QuotaExceededError" ? "full" : "refused";

export class Barn {
  #store = null;
  #tell = new Set();
  #last = Promise.resolve();
  now = EMPTY;
  trouble = null; // a key of NOT_KEPT
  news = ""; // one line about the last change, where it was not as asked

  async open() {
    try {
      this.#store = await openStore();
      this.now = await this.#store.read();
      this.#store.whenSavedElsewhere((version) => version > this.now.version && this.#readAgain());
    } catch (error) {
      this.#store = null;
      this.trouble = troubleOf(error);
    }
  }

  whenChanged(tell) {
    this.#tell.add(tell);
    return () => this.#tell.delete(tell);
  }

  /**
   * `make(record)` gives the fields that change, or null for none. Where another tab saved meanwhile it is made again of
   * what is there then.
   */
  change(make) {
    const done = this.#last.then(() => this.#change(make));
    this.#last = done.catch(() => {});
    return done;
  }

  async #change(make) {
    this.news = "";
    for (;;) {
      const fields = await make(this.now);
      if (!fields) return this.now;
      try {
        this.#became(await this.#saved({ ...this.now, ...fields }));
        return this.now;
      } catch (error) {
        if (!(error instanceof Stale)) throw error;
        this.news = "Another tab had changed the farm: this was done again on what is there now.";
        this.#became(error.fresh);
      }
    }
  }

  /** Without a store, or without room in it, the page goes on with what it has, and says so. */
  async #saved(record) {
    if (!this.#store) return { ...record, version: record.version + 1 };
    try {
      const saved = await this.#store.save(record);
      this.trouble = null;
      if (saved.version === 1) navigator.storage?.persist?.().catch(() => {}); // what is kept may then not be cleared for room
      return saved;
    } catch (error) {
      if (error instanceof Stale) throw error;
      this.trouble = troubleOf(error);
      return record;
    }
  }

  async #readAgain() {
    await this.change(async () => {
      this.#became(await this.#store.read());
      return null;
    });
  }

  #became(record) {
    this.now = record;
    for (const tell of this.#tell) tell();
  }
}
