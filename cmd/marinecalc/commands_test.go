package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

func TestHelpOfEachCommand(t *testing.T) {
	all := say("", "help")
	for _, name := range commandNames() {
		if !strings.Contains(all.out, "marinecalc "+name) {
			t.Errorf("%s is not in the help", name)
		}
		for _, args := range [][]string{{name, "--help"}, {name, "-h"}, {"help", name}} {
			if s := say("", args...); s.code != exitDone || s.errs != "" || !strings.Contains(s.out, "marinecalc "+name) {
				t.Errorf("%q: %v", args, s)
			}
		}
	}
	if s := say("", "--help"); s.code != exitDone || s.out != all.out {
		t.Error("--help says something else")
	}
	if s := say("", "help", "surway"); s.code != exitBad || !strings.Contains(s.errs, `did you mean "survey"`) {
		t.Error(s)
	}
}

func TestWhatMayHaveBeenMeant(t *testing.T) {
	boat := file(t, "tern.json", tern)
	for want, args := range map[string][]string{
		`did you mean "survey"?`:       {"survay", boat},
		`did you mean --trials?`:       {"survey", boat, "--trails", "100"},
		`did you mean --thread?`:       {"fill", "bolt-preload", "--tread", "M10"},
		`did you mean --reading?`:      {"log", boat, "--readin", "dripRate"},
		`did you mean --list?`:         {"readings", boat, "--lists"},
		`did you mean --untick?`:       {"procedure", "--untic", "x"},
		`did you mean "bolt-preload"?`: {"fill", "bolt-preloat"},
	} {
		if s := say("", args...); s.code != exitBad || !strings.Contains(s.errs, want) {
			t.Errorf("%q: %v", args, s)
		}
	}
	if s := say("", "index", "extra"); s.code != exitBad {
		t.Errorf("an argument too many: %v", s)
	}
}

func TestProblemsAsJSON(t *testing.T) {
	for _, args := range [][]string{{"survey", "nowhere.json", "--json"}, {"fill", "shaft-torque", "--engine-power", "20 kg", "--json"}, {"fill", "shaft-torque", "--engine-powr", "1", "--json"}} {
		s := say("", args...)
		var told struct{ Problems marinecalc.Problems }
		if err := json.Unmarshal([]byte(s.errs), &told); err != nil || len(told.Problems) == 0 || s.out != "" || s.code < exitBad {
			t.Errorf("%q: %v (%v)", args, s, err)
		}
	}
	var list []marinecalc.Entry
	if s := say("", "index", "--json"); json.Unmarshal([]byte(s.out), &list) != nil || len(list) != len(marinecalc.Calculations()) {
		t.Error("the index is no JSON")
	}
}

func TestSeveralBoats(t *testing.T) {
	one, two := file(t, "tern.json", tern), file(t, "plover.json", strings.Replace(tern, "Tern", "Plover", 1))
	s := say("", "survey", one, "nowhere.json", two, "--no-ranges")
	if s.code != exitFile || !strings.Contains(s.out, "Tern: the boat") || !strings.Contains(s.out, "Plover: the boat") || !strings.Contains(s.errs, "nowhere.json") {
		t.Error(s)
	}
	if s := say("", "survey", one, two, "--page", one+".html"); s.code != exitBad {
		t.Error(s)
	}
	if s := say("", "compare", one, two, "--before", "2026-05-02", "--after", "2026-05-02"); s.code != exitBad {
		t.Error(s)
	}
}

func TestCandidates(t *testing.T) {
	for _, c := range []struct {
		at    string
		words []string
		want  []string
	}{
		{"1", []string{"sur"}, []string{"survey"}},
		{"2", []string{"fill", "bolt-p"}, []string{"bolt-preload"}},
		{"2", []string{"blank", "shaft-w"}, []string{"shaft-whirl", "shaft-withdrawal"}},
		{"3", []string{"fill", "bolt-preload", "--thr"}, []string{"--thread-form", "--thread-friction", "--thread"}},
		{"4", []string{"fill", "bolt-preload", "--thread", "M10x"}, []string{"M10x1.5", "M10x1.25"}},
		{"4", []string{"fill", "bolt-preload", "--units", "m"}, []string{"metric"}},
		{"3", []string{"survey", "boat.json", "--no"}, []string{"--no-ranges"}},
		{"4", []string{"survey", "boat.json", "--page", ""}, nil},
		{"2", []string{"completion", "f"}, []string{"fish"}},
		{"2", []string{"survey"}, nil},
		{"9", []string{"survey"}, nil},
	} {
		got := strings.Fields(say("", append([]string{"candidates", c.at}, c.words...)...).out)
		for _, word := range c.want {
			if !slices.Contains(got, word) {
				t.Errorf("%v: %q, want %q among them", c.words, got, word)
			}
		}
		if len(c.want) == 0 && len(got) > 0 {
			t.Errorf("%v: %q, want any file", c.words, got)
		}
	}
}

// The shell itself takes what completion prints, and completes by it.
func TestCompletionInBash(t *testing.T) {
	bash, err := exec.LookPath("bash")
	if err != nil {
		t.Skip(err)
	}
	script := say("", "completion", "bash").out
	script = "marinecalc() { printf 'survey\\nseal\\n'; }\n" + script + "COMP_WORDS=(marinecalc s); COMP_CWORD=1; _marinecalc; echo \"${COMPREPLY[*]}\""
	cmd := exec.Command(bash, "-c", script)
	cmd.Env = os.Environ()
	if out, err := cmd.CombinedOutput(); err != nil || strings.Join(strings.Fields(string(out)), " ") != "survey seal" {
		t.Errorf("bash: %s (%v)", out, err)
	}
	if s := say("", "completion", "tcsh"); s.code != exitBad {
		t.Error(s)
	}
}

// The manual names everything, and every line that begins with a dot is a
// request of man(7).
func TestManual(t *testing.T) {
	page := say("", "manual").out
	request := regexp.MustCompile(`^\.(TH|SH|SS|TP|PP|B)( |$)`)
	for _, l := range strings.Split(page, "\n") {
		if strings.HasPrefix(l, ".") && !request.MatchString(l) || strings.HasPrefix(l, "'") {
			t.Errorf("not a request: %q", l)
		}
	}
	for _, c := range marinecalc.Calculations() {
		if !strings.Contains(page, ".SS "+strings.ReplaceAll(c.ID, "-", `\-`)+"\n") {
			t.Errorf("%s is not in the manual", c.ID)
		}
	}
	if groff, err := exec.LookPath("groff"); err == nil {
		cmd := exec.Command(groff, "-man", "-Tascii", "-ww")
		cmd.Stdin = strings.NewReader(page)
		if out, err := cmd.CombinedOutput(); err != nil || !strings.Contains(string(out), "MARINECALC(1)") {
			t.Errorf("groff: %v\n%.400s", err, out)
		}
	}
}

func TestNarrowTerminal(t *testing.T) {
	t.Setenv("COLUMNS", "50")
	defer func(was int) { plain.Width = was }(plain.Width)
	plain.Narrow(os.Stdout)
	for _, args := range [][]string{{"help"}, {"survey", file(t, "tern.json", tern), "--no-ranges"}} {
		for _, l := range strings.Split(say("", args...).out, "\n") {
			if n := len([]rune(l)); n > 50 && strings.Contains(strings.TrimSpace(l)[:min(40, len(strings.TrimSpace(l)))], " ") && !strings.Contains(l, "marinecalc ") {
				t.Errorf("%q has %d letters", l, n)
			}
		}
	}
}
