// Rows of the table keep their identity while their lines move. A change that waits for its
// turn, or comes from a screen that is not painted anew yet, finds its row by this.

const MOST = 100; // changes that are remembered: far more than can wait (judgement)

export class Rows {
  constructor() {
    /** The last changes, each with the lines that went out of the table before it. @type {{from: string, to: string, gone: number[]}[]} */
    this.changes = [];
    this.of = "";
    /** The numbers of the rows of that table, by line. @type {Map<number, number>} */
    this.numbers = new Map();
    this.last = 0;
  }

  /** @param {string} from @param {string} to @param {number[]} gone lines of the first that the second has not */
  changed(from, to, gone) {
    this.changes.push({ from, to, gone });
    if (this.changes.length > MOST) this.changes.shift();
  }

  /**
   * Where a line of one table stands in a later one: 0 where its row is gone, null where
   * something else than known changes lies between.
   * @param {string} of @param {string} now @param {number} line
   */
  follow(of, now, line) {
    for (let i = this.changes.map((c) => c.from).lastIndexOf(of); of !== now; i++) {
      const change = this.changes[i];
      if (change?.from !== of) return null;
      if (change.gone.includes(line)) return 0;
      line -= change.gone.filter((g) => g < line).length;
      of = change.to;
    }
    return line;
  }

  /** Numbers the rows of a table: those that were in the last one keep theirs. @param {string} now @param {number[]} lines */
  number(now, lines) {
    if (now === this.of && this.numbers.size) return;
    const kept = new Map([...this.numbers].map(([line, number]) => [this.follow(this.of, now, line) ?? line, number]));
    this.numbers = new Map(lines.map((line) => [line, kept.get(line) ?? ++this.last]));
    this.of = now;
  }
}
