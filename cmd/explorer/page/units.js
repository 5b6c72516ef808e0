// How figures are written. The engine's figures are in the units that their keys end in;
// here they are only turned into the builder's units and rounded.

/** @typedef {"mm" | "in" | "in64"} LengthUnit */
/** @typedef {"N" | "lbf" | "kgf"} ForceUnit */

const MM_PER_INCH = 25.4;
const NEWTONS = { N: 1, lbf: 4.4482216152605, kgf: 9.80665 };

export const LENGTH_UNITS = /** @type {const} */ ({ mm: "mm", in: "inches", in64: "64ths of an inch" });
export const FORCE_UNITS = /** @type {const} */ ({ N: "N", lbf: "lbf", kgf: "kgf" });

/** A sentence whose figures keep their units on the line. @param {string} words */
export const glued = (words) => words.replace(/(\d) (?=(%|mm|in|N|lbf|kgf|cents)(?!\w))/g, "$1\u00a0");

export class Units {
  /**
   * @param {LengthUnit} [length]
   * @param {ForceUnit} [force]
   */
  constructor(length = "mm", force = "N") {
    this.length = length;
    this.force = force;
    this.lengthName = length === "mm" ? "mm" : "in";
    this.inches = length !== "mm";
  }

  /**
   * A length without its unit: as many decimals as asked for in mm, one more in inches.
   * @param {number} mm
   * @param {number} [decimals]
   */
  bare(mm, decimals = 1) {
    if (this.length === "in64") return sixtyFourths(mm / MM_PER_INCH);
    return fixed(this.inches ? mm / MM_PER_INCH : mm, this.inches ? decimals + 1 : decimals);
  }

  /** A least length of wood without its unit: rounded up. @param {number} mm */
  atLeast(mm) {
    const step = this.length === "in64" ? MM_PER_INCH / 64 : this.inches ? MM_PER_INCH / 100 : 0.1;
    return this.bare(Math.ceil(mm / step - 1e-6) * step);
  }

  /**
   * A length with its unit.
   * @param {number} mm
   * @param {number} [decimals]
   */
  len(mm, decimals = 1) {
    return `${this.bare(mm, decimals)} ${this.lengthName}`;
  }

  /** A scale length, without decimals that say nothing. @param {number} mm */
  scale(mm) {
    if (this.length === "in64") return sixtyFourths(mm / MM_PER_INCH);
    return String(Number(fixed(this.inches ? mm / MM_PER_INCH : mm, this.inches ? 3 : 2).replace(MINUS, "-")));
  }

  /** A length or a force of the build file, such as a bound, in these units; any other text as it is. @param {string} text */
  ofText(text) {
    const [, figure, unit] = /^(-?[\d.]+) (mm|N)$/.exec(text) ?? [];
    if (unit === "mm" && this.inches) return `${Number((Number(figure) / MM_PER_INCH).toPrecision(3))} in`;
    if (unit === "N" && this.force !== "N") return `${Number((Number(figure) / NEWTONS[this.force]).toPrecision(3))} ${this.force}`;
    return text;
  }

  /** A string's diameter, without zeros that say nothing. @param {number} mm */
  diameter(mm) {
    return `${Number(this.of(mm).toFixed(this.inches ? 4 : 3))} ${this.lengthName}`;
  }

  /**
   * A mark as calipers show it, to 0.01 mm or 0.001 in, in decimals even where lengths go in
   * 64ths: 1/64 in could move a note by two cents. From another mark it is the difference of
   * both as they stand there, so that steps add up to marks.
   * @param {number} mm
   * @param {number} [from]
   */
  mark(mm, from = 0) {
    const decimals = this.inches ? 3 : 2, least = (/** @type {number} */ at) => Math.round(this.of(at) * 10 ** decimals * (1 + 2 ** -50));
    return fixed((least(mm) - least(from)) / 10 ** decimals, decimals);
  }

  /** The other way, for places on a rule. @param {number} value in the unit @returns {number} in mm */
  mm(value) {
    return this.inches ? value * MM_PER_INCH : value;
  }

  /** @param {number} mm @returns {number} in the unit */
  of(mm) {
    return this.inches ? mm / MM_PER_INCH : mm;
  }

  /** A force without its unit. @param {number} newtons */
  bareForce(newtons) {
    return fixed(newtons / NEWTONS[this.force], this.force === "N" ? 1 : 2);
  }

  /** A force and its standard uncertainty. @param {number} newtons @param {number} u */
  uncertainForce(newtons, u) {
    return uncertain(newtons / NEWTONS[this.force], u / NEWTONS[this.force], this.force === "N" ? 1 : 2);
  }
}

const MINUS = "−";

/** @param {number} value @param {number} decimals */
export function fixed(value, decimals) {
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? MINUS + text : text;
}

/** With its sign. @param {number} value @param {number} decimals */
export function signed(value, decimals) {
  const text = fixed(value, decimals);
  return value > 0 && Number(text) !== 0 ? "+" + text : text;
}

/**
 * A value and its standard uncertainty, both to the place of the uncertainty's first
 * digit, or its second where it begins with 1; never finer than most.
 * @param {number} value
 * @param {number} u
 * @param {number} most decimals
 * @returns {[string, string]}
 */
export function uncertain(value, u, most) {
  if (!(u > 0)) return [fixed(value, most), ""];
  const exponent = Math.floor(Math.log10(u));
  const decimals = Math.max(0, Math.min(most, u / 10 ** exponent < 2 ? 1 - exponent : -exponent));
  const least = 10 ** -decimals;
  return [fixed(value, decimals), "± " + fixed(Math.max(u, least), decimals)];
}

/** @param {number} degrees */
export function angle(degrees) {
  return fixed(degrees, 1) + "°";
}

/** Whole, then 64ths in lowest terms. @param {number} inches */
function sixtyFourths(inches) {
  const sign = inches < 0 ? MINUS : "";
  const all = Math.round(Math.abs(inches) * 64);
  const whole = Math.floor(all / 64);
  let [over, under] = [all % 64, 64];
  while (over && over % 2 === 0) [over, under] = [over / 2, under / 2];
  const fraction = over ? `${over}/${under}` : "";
  return sign + ([whole || !fraction ? String(whole) : "", fraction].filter(Boolean).join(" ") || "0");
}

/**
 * The divisions of a steel rule between two lengths: every division with its rank, 0 for
 * those that carry a number.
 * @param {number} from in mm
 * @param {number} to in mm
 * @param {number} perMm pixels
 * @param {Units} units
 * @param {number} [room] pixels between numbers
 * @returns {{mm: number, rank: number}[]}
 */
export function divisions(from, to, perMm, units, room = 34) {
  const scales = units.inches
    ? [[1 / 32, 1 / 8, 1 / 4], [1 / 16, 1 / 4, 1 / 2], [1 / 8, 1 / 2, 1], [1 / 4, 1, 2], [1, 2, 4]]
    : [[1, 5, 10], [1, 5, 20], [5, 10, 20], [5, 10, 50], [10, 50, 100]];
  const px = units.mm(1) * perMm;
  const [fine, middle, coarse] = scales.find(([f, , c]) => f * px >= 3 && c * px >= room) ?? scales[scales.length - 1];
  const out = [];
  for (let n = Math.ceil(units.of(from) / fine - 1e-6); n * fine <= units.of(to) + 1e-6; n++) {
    const whole = (/** @type {number} */ by) => Math.abs((n * fine) / by - Math.round((n * fine) / by)) < 1e-6;
    out.push({ mm: units.mm(n * fine), rank: whole(coarse) ? 0 : whole(middle) ? 1 : 2 });
  }
  return out;
}

/** @param {string} words */
export function capital(words) {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
