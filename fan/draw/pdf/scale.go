package pdf

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// The places of the library's output that trueScale relies on. A change of the
// library that moved them makes Write fail, and never a file that scales.
var (
	lastXref = regexp.MustCompile(`startxref\n(\d+)\n%%EOF\n$`)
	trailer  = regexp.MustCompile(`trailer\n<<\n/Size (\d+)\n/Root (\d+) 0 R\n/Info (\d+) 0 R\n>>\n`)
)

// trueScale appends an incremental update (ISO 32000-1, 7.5.6) to a finished
// file: a catalogue that asks print dialogues not to scale (12.2, PrintScaling),
// and properties without the placeholder date.
func trueScale(file []byte) ([]byte, error) {
	w, err := readWritten(file)
	if err != nil {
		return nil, err
	}
	catalogue, err := w.object(w.root)
	if err != nil {
		return nil, err
	}
	properties, err := w.object(w.info)
	if err != nil {
		return nil, err
	}
	catalogue = strings.TrimSuffix(catalogue, ">>\n") + "/ViewerPreferences << /PrintScaling /None >>\n>>\n"
	date := placeholderDate().Format("20060102150405")
	properties = strings.Replace(properties, "/CreationDate (D:"+date+")\n/ModDate (D:"+date+")\n", "", 1)

	u := update{out: bytes.NewBuffer(file)}
	u.add(w.info, properties)
	u.add(w.root, catalogue)
	u.finish(w.size, w.root, w.info, strconv.Itoa(w.xref))
	return u.out.Bytes(), nil
}

// writtenFile is a file as the library wrote it: where its table stands, where
// its objects begin, by their table, and what its trailer names.
type writtenFile struct {
	bytes            []byte
	xref             int
	begins           []int // by number; 0 for one that is free
	size, root, info string
}

func readWritten(file []byte) (writtenFile, error) {
	w := writtenFile{bytes: file}
	last := lastXref.FindSubmatch(file)
	if last == nil {
		return w, fmt.Errorf("pdf: no trailer found to amend")
	}
	w.xref, _ = strconv.Atoi(string(last[1]))
	table := file[min(w.xref, len(file)):]
	trail := trailer.FindSubmatch(table)
	head, rest, ok := bytes.Cut(table, []byte("\n0 "))
	if trail == nil || !ok || string(head) != "xref" {
		return w, fmt.Errorf("pdf: no trailer found to amend")
	}
	w.size, w.root, w.info = string(trail[1]), string(trail[2]), string(trail[3])
	for _, line := range bytes.Split(rest, []byte("\n"))[1:] {
		if len(line) < 10 || !bytes.HasSuffix(line, []byte(" n ")) && !bytes.HasSuffix(line, []byte(" f ")) {
			break
		}
		at, _ := strconv.Atoi(string(line[:10]))
		w.begins = append(w.begins, at)
	}
	return w, nil
}

// object gives the body of object n. It ends where the next object or the table
// begins: no word inside can end it, since a title may hold any bytes.
func (w writtenFile) object(n string) (string, error) {
	number, err := strconv.Atoi(n)
	if err != nil || number >= len(w.begins) || w.begins[number] == 0 {
		return "", fmt.Errorf("pdf: object %s not found", n)
	}
	begin, end := w.begins[number], w.xref
	for _, at := range w.begins {
		if at > begin && at < end {
			end = at
		}
	}
	body, headed := bytes.CutPrefix(w.bytes[begin:end], []byte(n+" 0 obj\n"))
	body, ended := bytes.CutSuffix(body, []byte("endobj\n"))
	if !headed || !ended {
		return "", fmt.Errorf("pdf: object %s has no end", n)
	}
	return string(body), nil
}

// update is an incremental update being written.
type update struct {
	out     *bytes.Buffer
	entries strings.Builder
}

// add writes a new version of object n and notes where it stands.
func (u *update) add(n, body string) {
	fmt.Fprintf(&u.entries, "%s 1\n%010d 00000 n \n", n, u.out.Len())
	fmt.Fprintf(u.out, "%s 0 obj\n%sendobj\n", n, body)
}

// finish writes the cross-reference section and the trailer.
func (u *update) finish(size, root, info, previous string) {
	at := strconv.Itoa(u.out.Len())
	fmt.Fprintf(u.out, "xref\n%strailer\n<<\n/Size %s\n/Root %s 0 R\n/Info %s 0 R\n/Prev %s\n>>\nstartxref\n%s\n%%%%EOF\n",
		u.entries.String(), size, root, info, previous, at)
}
