// Package disk reads and writes the files of a run: as a whole or not at all,
// never over another kind, never over what another program wrote meanwhile.
package disk

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"

	"example.org/driveline/marinecalc"
	"example.org/driveline/schemas"
)

// Standard is the name of standard input in place of a file's.
const Standard = "-"

// Files are what a run reads and writes. The zero value with In is ready.
type Files struct {
	In    io.Reader // standard input
	Taken bool      // it was read, which can be done once

	read map[string][]byte // the files that were read, by their names
}

// Error is a file that could not be read or written, or standard output that
// took no more.
type Error struct{ Err error }

func (e Error) Error() string { return e.Err.Error() }

// Unwrap gives the problem.
func (e Error) Unwrap() error { return e.Err }

// Load reads a file, or standard input where it is named "-".
func (f *Files) Load(where, name string) ([]byte, error) {
	return f.LoadUpTo(math.MaxInt64-1, where, name)
}

// LoadUpTo refuses what is longer than that before it is read to its end.
func (f *Files) LoadUpTo(most int64, where, name string) ([]byte, error) {
	if name != Standard {
		file, err := os.Open(name)
		if err != nil {
			return nil, Unreadable(where, err)
		}
		defer file.Close()
		text, err := upTo(most, where, file)
		if err != nil {
			return nil, err
		}
		if f.read == nil {
			f.read = map[string][]byte{}
		}
		f.read[name] = text
		return text, nil
	}
	if f.Taken {
		return nil, marinecalc.Problems{{Where: where, What: "standard input was read for something else already", Allowed: "- once, and names of files"}}.Err()
	}
	f.Taken = true
	return upTo(most, where, f.In)
}

func upTo(most int64, where string, from io.Reader) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(from, most+1))
	switch {
	case err != nil:
		return nil, Unreadable(where, err)
	case int64(len(text)) > most:
		return nil, marinecalc.Problems{{Where: where, What: "what was given is too long", Allowed: fmt.Sprintf("at most %d bytes", most)}}.Err()
	}
	return text, nil
}

// Output is a text that goes to a file.
type Output struct {
	Where, Name string // the flag that names it, and the file
	Text        []byte
}

// Save writes a text to a file as a whole or not at all: beside it first, then
// in its place once it is on the disk. What is there stays there where it is of
// another kind, or where another program wrote it since it was read.
func (f *Files) Save(where, name string, text []byte) error {
	return f.SaveAll(Output{where, name, text})
}

// SaveAll writes all of them so, or none.
func (f *Files) SaveAll(outputs ...Output) error {
	var moves []func() error
	for _, o := range outputs {
		move, drop, err := f.stage(o)
		if err != nil {
			return err
		}
		defer drop()
		moves = append(moves, move)
	}
	for _, move := range moves {
		if err := move(); err != nil {
			return err
		}
	}
	return nil
}

// stage writes a text beside its file. Move puts it in its place, drop takes away
// what was not moved.
func (f *Files) stage(o Output) (move func() error, drop func(), err error) {
	where, name, text := o.Where, o.Name, o.Text
	if at, err := filepath.EvalSymlinks(name); err == nil {
		name = at // a link goes on leading to the file
	}
	mode := fs.FileMode(0o644)
	info, err := os.Stat(name)
	switch {
	case err == nil && !info.Mode().IsRegular() && !info.IsDir():
		return func() error {
			if err := os.WriteFile(name, text, mode); err != nil { // a device or a pipe
				return Unwritable(where, err)
			}
			return nil
		}, func() {}, nil
	case err == nil:
		mode = info.Mode().Perm()
	case !errors.Is(err, fs.ErrNotExist):
		return nil, nil, Unwritable(where, err)
	}
	unlock, err := lock(where, name)
	if err != nil {
		return nil, nil, err
	}
	if err := f.mayReplace(where, name, text); err != nil {
		unlock()
		return nil, nil, err
	}
	beside, err := writeBeside(name, text, mode)
	if err != nil {
		unlock()
		return nil, nil, Unwritable(where, err)
	}
	return func() error {
			if err := os.Rename(beside, name); err != nil {
				return Unwritable(where, err)
			}
			if folder, err := os.Open(filepath.Dir(name)); err == nil { // the new name is on the disk too, where folders can be synchronised
				_ = folder.Sync()
				_ = folder.Close()
			}
			return nil
		}, func() {
			_ = os.Remove(beside) // is gone where it was moved
			unlock()
		}, nil
}

// mayReplace tells whether what is in a file may go for the text.
func (f *Files) mayReplace(where, name string, text []byte) error {
	there, err := os.ReadFile(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return Unwritable(where, err)
	}
	for read, before := range f.read {
		if at, err := filepath.EvalSymlinks(read); err == nil && sameFile(at, name) && !bytes.Equal(before, there) {
			return marinecalc.Problems{{Where: where, What: name + " was changed by another program after it was read; nothing was written", Hint: "run the command again"}}.Err()
		}
	}
	if was, is := kindOf(there), kindOf(text); was != "" && was != is {
		return marinecalc.Problems{{Where: where, What: fmt.Sprintf("%s holds %s, and %s would take its place", name, was, is), Allowed: "a new file, or one that holds " + is, Hint: "choose another name, or move that file away"}}.Err()
	}
	return nil
}

func sameFile(a, b string) bool {
	one, err := os.Stat(a)
	if err != nil {
		return false
	}
	other, err := os.Stat(b)
	return err == nil && os.SameFile(one, other)
}

// kindOf says in words what a text holds, "" where there is none.
func kindOf(text []byte) string {
	text = Trimmed(text)
	first, _, _ := bytes.Cut(text, []byte("\n"))
	begins := func(s string) bool { return len(first) >= len(s) && strings.EqualFold(string(first[:len(s)]), s) }
	switch {
	case len(text) == 0:
		return ""
	case begins("BEGIN:VCALENDAR"):
		return "a calendar"
	case begins("<!doctype html") || begins("<html"):
		return "a page"
	case json.Valid(text):
		if isBoat(text) {
			return "a boat"
		}
		return "other JSON than a boat"
	case bytes.ContainsAny(first, ",;\t"):
		return "a table (CSV)"
	}
	return "something else"
}

// Trimmed is a text without the mark of its encoding and the spaces round it.
func Trimmed(text []byte) []byte {
	return bytes.TrimSpace(bytes.TrimPrefix(text, []byte("\xef\xbb\xbf")))
}

// isBoat tells whether JSON has a member of boat files.
func isBoat(text []byte) bool {
	var members map[string]json.RawMessage
	var boat struct {
		Properties map[string]json.RawMessage `json:"properties"`
	}
	schema, err := schemas.Read("boat")
	if err == nil {
		err = errors.Join(json.Unmarshal(schema, &boat), json.Unmarshal(text, &members))
	}
	for name := range members {
		if _, is := boat.Properties[name]; is && name != "$schema" && name != "note" {
			return err == nil
		}
	}
	return false
}

// writeBeside writes the text to a new file in the folder of name.
func writeBeside(name string, text []byte, mode fs.FileMode) (string, error) {
	beside, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+".*")
	if err != nil {
		return "", err
	}
	_, err = beside.Write(text)
	if err == nil {
		err = beside.Sync()
	}
	if err == nil {
		err = beside.Chmod(mode)
	}
	if closing := beside.Close(); err == nil {
		err = closing
	}
	if err != nil {
		return "", errors.Join(err, os.Remove(beside.Name()))
	}
	return beside.Name(), nil
}

// lock keeps a second writer off a file while it is compared and replaced.
func lock(where, name string) (unlock func(), err error) {
	beside := name + ".lock"
	made, err := os.OpenFile(beside, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return nil, marinecalc.Problems{{Where: where, What: name + " is being written by another marinecalc; nothing was written", Hint: "try again; if no other one runs, take " + beside + " away"}}.Err()
	}
	if err != nil {
		return nil, Unwritable(where, err)
	}
	fmt.Fprintln(made, os.Getpid())
	_ = made.Close()
	return func() { _ = os.Remove(beside) }, nil
}

// Unreadable is what to say of a file that cannot be read.
func Unreadable(where string, err error) error {
	return Error{marinecalc.Problems{{Where: where, What: err.Error(), Allowed: "a file that can be read, or - for standard input", Hint: "check its name and folder"}}.Err()}
}

// Unwritable is what to say of one that cannot be written.
func Unwritable(where string, err error) error {
	return Error{marinecalc.Problems{{Where: where, What: err.Error() + "; what was there before is untouched", Allowed: "a file that can be written", Hint: "check its name, its folder and the room on the disk"}}.Err()}
}
