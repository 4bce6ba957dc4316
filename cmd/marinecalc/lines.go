package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"sync"
	"time"

	"golang.org/x/term"

	"example.org/driveline/cmd/marinecalc/disk"
	"example.org/driveline/marinecalc"
)

// longestLine is more than any request may have.
const longestLine = 16 << 20

// line is a request and the reply to it.
type line struct {
	number int
	text   []byte // nil where it was too long
	reply  chan []byte
}

// lines answers requests in JSON, one a line (schemas/request.schema.json), by
// replies, one a line and in the same order. They are worked on side by side,
// and no more of them are held than that. What is wrong with one is in its
// reply and on standard error, by the number of its line; the others are
// answered all the same. Empty lines are passed over.
func (t *terminal) lines(args []string) (int, error) {
	fs := flag.NewFlagSet("lines", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	var c common
	fs.Var(&c.rules, "rules", "")
	atOnce := fs.Int("at-once", runtime.GOMAXPROCS(0), "")
	files, err := parse(fs, args)
	if err != nil {
		return 0, badFlag("lines", err, flagsOf(fs), "")
	}
	if *atOnce < 1 || *atOnce > 1024 {
		return 0, marinecalc.Problems{{Where: "--at-once", What: fmt.Sprintf("%d is no number of requests to work on at a time", *atOnce), Allowed: "1 to 1024"}}.Err()
	}
	if len(files) > 1 {
		return 0, marinecalc.Problems{{Where: "lines", What: "reads one file", Allowed: "a file, or none for standard input"}}.Err()
	}
	o, err := c.options(t)
	if err != nil {
		return 0, err
	}
	engine, err := marinecalc.New(marinecalc.WithRules(o.Rules))
	if err != nil {
		return 0, err
	}
	in := t.In
	if len(files) == 1 && files[0] != disk.Standard {
		file, err := os.Open(files[0])
		if err != nil {
			return 0, disk.Unreadable("lines", err)
		}
		defer file.Close()
		in = file
	} else if t.Taken {
		_, err := t.Load("lines", disk.Standard)
		return 0, err
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	return t.answerLines(ctx, in, engine, *atOnce)
}

func (t *terminal) answerLines(ctx context.Context, in io.Reader, engine *marinecalc.Engine, atOnce int) (int, error) {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	work, ordered := make(chan *line), make(chan *line, 2*atOnce)
	var reading error
	go func() {
		defer close(ordered)
		defer close(work)
		reading = eachLine(in, func(l *line) bool {
			for _, to := range []chan *line{ordered, work} {
				select {
				case to <- l:
				case <-ctx.Done():
					return false
				}
			}
			return true
		})
	}()
	var workers sync.WaitGroup
	for range atOnce {
		workers.Go(func() {
			for l := range work {
				l.reply <- answerLine(ctx, engine, l)
			}
		})
	}
	out := bufio.NewWriterSize(t.out, 1<<16)
	told := t.tally()
	for l := range ordered {
		var reply []byte
		select {
		case reply = <-l.reply:
		case <-ctx.Done():
			continue
		}
		if refused(reply) {
			told.refused++
			fmt.Fprintf(t.errs, "%sline %d: %s\n", told.clear(), l.number, firstProblem(reply))
		}
		_, err := out.Write(append(reply, '\n'))
		if len(ordered) == 0 && err == nil {
			err = out.Flush() // nobody waits for what is worked out
		}
		if err != nil {
			stop() // standard output takes no more
		}
		told.count()
	}
	workers.Wait()
	told.end()
	if err := out.Flush(); err != nil {
		return exitFile, disk.Unwritable("standard output", err)
	}
	if reading != nil {
		return exitFile, disk.Unreadable("lines", reading)
	}
	if told.refused > 0 {
		return exitBad, nil
	}
	return exitDone, nil
}

// eachLine hands over the lines that are not empty, until one is not wanted.
func eachLine(in io.Reader, take func(*line) bool) error {
	r := bufio.NewReaderSize(in, 1<<16)
	for number := 1; ; number++ {
		text, long, err := readLine(r)
		if text = bytes.TrimSpace(text); long || len(text) > 0 {
			l := &line{number: number, text: text, reply: make(chan []byte, 1)}
			if long {
				l.text = nil
			}
			if !take(l) {
				return nil
			}
		}
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
	}
}

// readLine reads a line; of one that is too long it keeps nothing.
func readLine(r *bufio.Reader) (text []byte, long bool, err error) {
	for {
		part, err := r.ReadSlice('\n')
		if long = long || len(text)+len(part) > longestLine; long {
			text = nil
		} else {
			text = append(text, part...)
		}
		if !errors.Is(err, bufio.ErrBufferFull) {
			return text, long, err
		}
	}
}

func answerLine(ctx context.Context, engine *marinecalc.Engine, l *line) []byte {
	if l.text == nil {
		reply, _ := json.Marshal(map[string]any{"ok": false, "problems": marinecalc.Problems{{What: fmt.Sprintf("the line has more than %d bytes", longestLine), Hint: "leave out what is not needed"}}}) // plain texts always can be written
		return reply
	}
	return engine.Call(ctx, l.text)
}

func refused(reply []byte) bool { return bytes.HasPrefix(reply, []byte(`{"ok":false`)) }

func firstProblem(reply []byte) string {
	var r struct {
		Problems marinecalc.Problems `json:"problems"`
	}
	if err := json.Unmarshal(reply, &r); err != nil || len(r.Problems) == 0 {
		return "was refused"
	}
	text := r.Problems[0].String()
	if more := len(r.Problems) - 1; more > 0 {
		text += fmt.Sprintf(" (and %d more in the reply)", more)
	}
	return text
}

// tally says on standard error how far the lines are: over the same line of a
// terminal each second, else a line now and then.
type tally struct {
	errs          io.Writer
	over          bool // writes over its line
	shown         bool
	done, refused int
	began, last   time.Time
	every         time.Duration
}

func (t *terminal) tally() *tally {
	file, ok := t.errs.(*os.File)
	over := ok && term.IsTerminal(int(file.Fd()))
	now := time.Now()
	c := &tally{errs: t.errs, over: over, began: now, last: now, every: 30 * time.Second}
	if over {
		c.every = time.Second
	}
	return c
}

func (c *tally) count() {
	c.done++
	if now := time.Now(); now.Sub(c.last) >= c.every {
		c.last = now
		c.tell()
	}
}

func (c *tally) tell() {
	text := fmt.Sprintf("%d lines, %.0f a second, %d refused", c.done, float64(c.done)/time.Since(c.began).Seconds(), c.refused)
	if !c.over {
		fmt.Fprintln(c.errs, text)
		return
	}
	fmt.Fprint(c.errs, c.clear(), text)
	c.shown = true
}

// clear takes what stands on the terminal's line away.
func (c *tally) clear() string {
	if !c.shown {
		return ""
	}
	c.shown = false
	return "\r\x1b[K"
}

// end tells the last count where there was one before.
func (c *tally) end() {
	if c.last.After(c.began) {
		c.tell()
	}
	if c.shown {
		fmt.Fprintln(c.errs)
	}
}
