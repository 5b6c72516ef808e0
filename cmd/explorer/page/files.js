// Files in and out: drop, picker, download. A dropped file is looked at first; one that is
// broken changes nothing.

/** @typedef {import("./store.js").TextName} TextName */

const MOST = 4 << 20; // bytes of a text that is read (judgement)

/**
 * Which of the three texts a file is.
 * @param {string} name
 * @param {string} text
 * @returns {TextName}
 */
function kindOf(name, text) {
  if (/\.toml$/i.test(name)) return "build";
  const heading = text.split(/\r?\n/).find((line) => line.trim() && !line.startsWith("#")) ?? "";
  return /(^|[,;\t])\s*"?measured/i.test(heading) ? "marks" : "readings";
}

/**
 * @param {Iterable<File>} files
 * @returns {Promise<{name: string, text: string, kind: TextName}[]>}
 */
export async function readFiles(files) {
  return Promise.all([...files].map(async (file) => {
    if (file.size > MOST) throw new Error(`${file.name} is larger than 4 MB: it is no text for this page`);
    const text = new TextDecoder("utf-8", { ignoreBOM: true }).decode(await file.arrayBuffer());
    return { name: file.name, text, kind: kindOf(file.name, text) };
  }));
}

/** Takes files dropped anywhere on the page. @param {(files: File[]) => void} take */
export function dropped(take) {
  document.addEventListener("dragover", (event) => event.preventDefault());
  document.addEventListener("drop", (event) => {
    event.preventDefault();
    const files = [...(event.dataTransfer?.files ?? [])]; // which are gone after the event
    if (files.length) take(files);
  });
}

/**
 * @param {string} name
 * @param {string} type
 * @param {Uint8Array | string} content
 */
export function download(name, type, content) {
  const url = URL.createObjectURL(new Blob([/** @type {BlobPart} */ (content)], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
