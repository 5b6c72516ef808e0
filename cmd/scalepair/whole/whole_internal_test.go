package whole

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFilesAreWrittenTogether(t *testing.T) {
	dir := t.TempDir()
	write(t, dir, before)
	o := orderIn(dir)
	o.Force = false
	err := o.Write()
	assert.ErrorContains(t, err, "a: the file exists already; move it away")
	assert.ErrorContains(t, err, "c: the file exists already; move it away")
	assert.Equal(t, before, folder(t, dir))
	require.NoError(t, orderIn(dir).Write())
	assert.Equal(t, after, folder(t, dir))
}

// Every place that cannot be written is named, and nothing is left behind.
func TestPlacesThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	write(t, dir, map[string]string{"file": "text"})
	require.NoError(t, os.Mkdir(at("d"), 0o755))
	was := folder(t, dir)
	err := Order{Force: true, Files: []File{
		{Path: at("new")}, {Path: at("d")}, {Path: at("none/b")}, {Path: at("file/b")}, {Path: "-"}, {Path: at("d") + "/../new"},
	}}.Write()
	assert.ErrorContains(t, err, at("d")+": there is a folder of that name; name a file in it, or another")
	assert.ErrorContains(t, err, at("none/b")+": there is no such folder; name a path in a folder of yours")
	assert.ErrorContains(t, err, at("file/b")+": the file cannot be written: not a directory; name a path in a folder of yours")
	assert.ErrorContains(t, err, "-: this is no file")
	assert.ErrorContains(t, err, at("d")+`/../new: this is the same file as another ("`+at("new")+`"); name every file once`)
	assert.Equal(t, was, folder(t, dir))
}

// What a run has read is not written over, under whatever name: not a file
// that it looked for in vain either.
func TestInputsAreNotWrittenOver(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	write(t, dir, map[string]string{"readings.csv": "weighed", "other.csv": "free"})
	require.NoError(t, os.Link(at("readings.csv"), at("second.csv")))
	require.NoError(t, os.Symlink(at("readings.csv"), at("way.csv")))
	require.NoError(t, os.Symlink(dir, at("back")))
	was, err := os.ReadDir(dir)
	require.NoError(t, err)
	inputs := []string{at("readings.csv"), at("missing.csv")}
	for _, name := range []string{"readings.csv", "second.csv", "way.csv", "back/readings.csv", "back/../" + filepath.Base(dir) + "/readings.csv", "missing.csv", "back/missing.csv"} {
		for _, force := range []bool{false, true} {
			err := Order{Files: []File{{Path: dir + "/" + name, Text: []byte("lost")}}, Force: force, Inputs: inputs}.Write()
			assert.ErrorContains(t, err, name+": this run reads that file, and does not write over it, with --force neither; name another file")
		}
	}
	text, err := os.ReadFile(at("readings.csv"))
	require.NoError(t, err)
	assert.Equal(t, "weighed", string(text))
	is, err := os.ReadDir(dir)
	require.NoError(t, err)
	assert.Len(t, is, len(was))
	require.NoError(t, Order{Files: []File{{Path: at("other.csv"), Text: []byte("new")}}, Force: true, Inputs: inputs}.Write())
}

// A file that the run has read and changes must be what it was.
func TestFileThatHasChanged(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "build.toml")
	o := Order{Files: []File{{Path: path, Text: []byte("chosen"), Was: []byte("read")}}, Inputs: []string{path}}
	for _, now := range []string{"edited", "read and more", ""} {
		write(t, dir, map[string]string{"build.toml": now})
		assert.ErrorContains(t, o.Write(), "build.toml: the file has changed since this run read it; run the command again")
		assert.Equal(t, map[string]string{"build.toml": now}, folder(t, dir))
	}
	require.NoError(t, os.Remove(path))
	assert.ErrorContains(t, o.Write(), "the file has changed since this run read it")
	assert.Empty(t, folder(t, dir))
	write(t, dir, map[string]string{"build.toml": "read"})
	require.NoError(t, o.Write())
	assert.Equal(t, map[string]string{"build.toml": "chosen"}, folder(t, dir))
}

// A file that comes between the look and the move is not replaced, and what
// was moved before it is taken back.
func TestFileThatComesMeanwhile(t *testing.T) {
	for _, noLinks := range []bool{false, true} {
		dir := t.TempDir()
		d := &trialDisk{at: -1, noLinks: noLinks, before: func() { write(t, dir, map[string]string{"b": "another run's"}) }}
		o := orderIn(dir)
		o.Force = false
		assert.ErrorContains(t, o.write(d), "b: a file of that name has come meanwhile; look at it, and name another, or say --force to replace it")
		assert.Equal(t, map[string]string{"b": "another run's"}, folder(t, dir))
	}
}

// A folder is made with those above it, and taken away again when nothing is
// written into it.
func TestFolderIsMade(t *testing.T) {
	dir := t.TempDir()
	made := filepath.Join(dir, "a", "b")
	o := Order{Folder: made, Files: []File{{Path: filepath.Join(made, "x"), Text: []byte("x")}}}
	for at := 0; ; at++ {
		d := &trialDisk{at: at}
		if err := o.write(d); err == nil {
			break
		}
		assert.Empty(t, folder(t, dir), "step %d, %s", at, d.failed())
	}
	assert.Equal(t, map[string]string{"a": "folder", "a/b": "folder", "a/b/x": "x"}, folder(t, dir))
	o.Folder, o.Files[0].Path = filepath.Join(made, "x", "y"), filepath.Join(made, "x", "y", "z")
	assert.ErrorContains(t, o.Write(), "x/y/z: the file cannot be written: not a directory")
}

// Behind a link to a folder, ".." is the folder above where the link leads.
func TestFolderAboveALink(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.MkdirAll(filepath.Join(dir, "far", "away"), 0o755))
	require.NoError(t, os.Symlink(filepath.Join("far", "away"), filepath.Join(dir, "way")))
	d := &trialDisk{at: 1, dies: true}
	o := Order{Files: []File{{Path: dir + "/way/../x", Text: []byte("x")}}}
	require.Error(t, o.write(d))
	left := folder(t, filepath.Join(dir, "far"))
	assert.Len(t, left, 2, "the unfinished file waits in the folder that it is for")
	require.NoError(t, o.Write())
	assert.Equal(t, "x", folder(t, filepath.Join(dir, "far"))["x"])
}

// A link is followed and stays; other names of a file keep the old text.
func TestLinks(t *testing.T) {
	dir := t.TempDir()
	at := func(name string) string { return filepath.Join(dir, name) }
	write(t, dir, map[string]string{"file": "old"})
	require.NoError(t, os.Symlink("file", at("way")))
	require.NoError(t, os.Link(at("file"), at("second")))
	require.NoError(t, Order{Force: true, Files: []File{{Path: at("way"), Text: []byte("new")}}}.Write())
	assert.Equal(t, map[string]string{"file": "new", "way": "new", "second": "old"}, folder(t, dir))
	to, err := os.Readlink(at("way"))
	require.NoError(t, err)
	assert.Equal(t, "file", to)
	require.NoError(t, os.Symlink("nowhere", at("astray")))
	assert.ErrorContains(t, Order{Force: true, Files: []File{{Path: at("astray")}}}.Write(), "astray: a link of that name leads nowhere")
}

// Only what has our name, is a plain file and is old is taken for left behind.
func TestSweepIsCareful(t *testing.T) {
	dir := t.TempDir()
	files := map[string]string{unfinished + "0000000a": "", unfinished + "0000000b": "", former + "0000000c": "", ".scalepair-notes": "", "scalepair-unfinished-": ""}
	write(t, dir, files)
	require.NoError(t, os.Mkdir(filepath.Join(dir, unfinished+"folder"), 0o755))
	long := time.Now().Add(-leftAfter - time.Minute)
	for name := range folder(t, dir) {
		if name != unfinished+"0000000b" {
			require.NoError(t, os.Chtimes(filepath.Join(dir, name), long, long))
		}
	}
	require.NoError(t, Order{Files: []File{{Path: filepath.Join(dir, "a"), Text: []byte("a")}}}.Write())
	delete(files, unfinished+"0000000a")
	files["a"], files[unfinished+"folder"] = "a", "folder"
	assert.Equal(t, files, folder(t, dir))
}

func TestFaultsOfTheSystem(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{
		{&fs.PathError{Op: "open", Path: "x", Err: syscall.EACCES}, "p: the folder does not allow writing; name a path in a folder of yours"},
		{&fs.PathError{Op: "open", Path: "x", Err: syscall.EROFS}, "p: the file cannot be written: read-only file system; name a path in a folder of yours"},
		{&fs.PathError{Op: "write", Path: "x", Err: syscall.ENOSPC}, "p: the file cannot be written: no space left on device; make room there, or name a path on another disk"},
		{syscall.EDQUOT, "p: the file cannot be written: disk quota exceeded; make room there, or name a path on another disk"},
		{syscall.EIO, "p: the file cannot be written: input/output error; name a path in a folder of yours"},
	} {
		assert.EqualError(t, writeFault("p", c.err), c.want)
	}
	held := &os.LinkError{Op: "rename", Old: "x", New: "y", Err: syscall.EACCES}
	assert.EqualError(t, moveFault("p", held), "p: the file cannot be put in its place: permission denied; close the program that holds it open, or name another file")
}
