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
	xref := lastXref.FindSubmatch(file)
	trail := trailer.FindSubmatch(file)
	if xref == nil || trail == nil {
		return nil, fmt.Errorf("pdf: no trailer found to amend")
	}
	catalogue, err := object(file, string(trail[2]))
	if err != nil {
		return nil, err
	}
	properties, err := object(file, string(trail[3]))
	if err != nil {
		return nil, err
	}
	catalogue = strings.TrimSuffix(catalogue, ">>\n") + "/ViewerPreferences << /PrintScaling /None >>\n>>\n"
	date := placeholderDate.Format("20060102150405")
	properties = strings.Replace(properties, "/CreationDate (D:"+date+")\n/ModDate (D:"+date+")\n", "", 1)

	u := update{out: bytes.NewBuffer(file)}
	u.add(string(trail[3]), properties)
	u.add(string(trail[2]), catalogue)
	u.finish(string(trail[1]), string(trail[2]), string(trail[3]), string(xref[1]))
	return u.out.Bytes(), nil
}

// object gives the body of object n as the library wrote it.
func object(file []byte, n string) (string, error) {
	head := []byte("\n" + n + " 0 obj\n")
	start := bytes.LastIndex(file, head)
	if start < 0 {
		return "", fmt.Errorf("pdf: object %s not found", n)
	}
	body := file[start+len(head):]
	end := bytes.Index(body, []byte("endobj\n"))
	if end < 0 {
		return "", fmt.Errorf("pdf: object %s has no end", n)
	}
	return string(body[:end]), nil
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
