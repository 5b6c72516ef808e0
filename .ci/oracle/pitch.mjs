// Prints note, MIDI number and frequency in Hz for every note name given on
// standard input, one a line, as a general note library sees them.
import { readFileSync } from "node:fs";
import Note from "@tonaljs/note";

for (const name of readFileSync(0, "utf8").split(/\s+/).filter(Boolean)) {
  const note = Note.get(name);
  console.log(name, note.midi, note.freq);
}
