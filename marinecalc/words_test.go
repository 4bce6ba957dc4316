package marinecalc_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// notTheTrades are words that cost trust because the trade has others, each
// with what to say in its place. They are kept out of identifiers, schemas,
// rule rows, messages, the page and the docs alike.
var notTheTrades = []struct{ pattern, say string }{
	{`\breckon|[a-z]Reckon`, "calculate, used, calculation"},
	{`\brunning[- ]torque\b|runningTorque|RunningTorque`, "prevailing torque"},
	{`\binsert nuts?\b|InsertNut`, "nylon-insert lock nut"},
	{`\b(clamp|preload) (aimed for|reached)\b|\bleast clamp\b`, "target, achieved, minimum clamp load"},
	{`\bstretch(es)? for good\b`, "takes a permanent set"},
	{`\bwhat the flange bears\b`, "allowable bearing stress under the head"},
	{`\bwhat it bears\b`, "its allowable load"},
	{`\bleast safety\b`, "minimum safety factor"},
	{`\bpull and twist together\b`, "combined tension and torsion"},
	{`\bnuts? that runs? free\b`, "free-spinning nut"},
	{`\bgap difference for the diameter\b|\bgap from the droop for\b`, "face gap per unit of flange diameter"},
	{`\bsteps? at the (coupling )?rim\b|\bgaps and steps\b|\bhalf high\b`, "rim offset; engine flange high"},
	{`\bout of line\b`, "misaligned"},
	{`\b([Cc]oupling|[Ee]ngine|[Ss]haft) hal(f|ves)\b|\b([Bb]oth|[Tt]he two) halves\b|ShaftHalf|BothHalves`, "shaft coupling flange; gearbox output flange"},
	{`\bgrip of the coupling\b|\bgrip (ahead|astern|in a shock)\b`, "slip torque of the coupling"},
	{`\bone grade lower\b`, "next lower bolt grade"},
	{`\bsag of the (rubber|worst mount)\b|\bmount[- ]sag\b|\b(rubber|mounts?) sags\b`, "mount deflection"},
	{`\bmounts sagged\b|\bsagged mounts\b`, "mounts settled or perished"},
	{`\bsag of the (shaft|free end|hanging)\b|\bshaft sags\b|\bby its sag\b|\bsag (just )?(lifted|taken) (out|off)\b|\bends? sags?\b`, "droop"},
	{`\bswings by itself\b`, "natural frequencies, rigid-body modes"},
	{`\bfiring torque that reaches\b`, "transmitted vibration at firing frequency"},
	{`\bstiffness when shaking\b`, "dynamic-to-static stiffness ratio"},
	{`\bwater that swings\b`, "entrained (added) water"},
	{`\bwhere it whips\b|\bwhips\b|\bflails?\b|\bwhipping\b`, "whirls; point of greatest deflection"},
	{`\b(a|the) shake\b|\bshak(es|ing)\b|\b(does (it|the engine)|would) shake\b`, "vibration, vibrates"},
	{`\bwith the gear in\b`, "in gear"},
	{`\b(follower|nuts?) (drawn up|eased)\b|\bfollower nuts?\b`, "gland nuts tightened, backed off"},
	{`\bpacking of the gland\b|\bcost of the drips\b`, "stuffing-box packing; bilge and battery load"},
	{`\brunning tap\b|\bnot a tap\b`, "more than a gland should leak"},
	{`\bbush(es)?\b|[a-z]Bush\b|\bBush\b`, "bearing, bearing shell"},
	{`\bdraw(s|n|ing)? (it |them )?off\b`, "pull"},
	{`\bshaft drawn\b|\bdraw the shaft\b|\bbody drawn\b`, "withdraw the shaft; slid forward"},
	{`\bring of bolts\b`, "bellhousing bolts"},
	{`\bblow goes through\b`, "shock loads the damper plate"},
	{`\bway widened\b`, "keyway worn"},
	{`\bkeel and props\b`, "keel and stands"},
	{`\bmetal afloat\b`, "metal in suspension"},
	{`\broom to begin\b|\bno room: a delay\b`, "slack"},
	{`\bless room than there\b|\broom (handed over|for n bytes)\b`, "space, buffer, fits: room is clearance"},
	{`\b(can|could) be told\.|\bit can be told\b`, "to get a verdict"},
	{`\b(the|any|every|one|same|JSON) doors?\b`, "entry point, way in"},
	{`\bspeaks? (for|against)\b`, "evidence for, against"},
	{`\bno leave to\b`, "not permission to"},
	{`\blicensed (hands|mechanic)\b`, "qualified technician, marine engineer"},
	{`\bunless told otherwise\b`, "default"},
	{`\bto be had\b|\bhow to come by\b`, "available, how to get it"},
	{`\b(laid|lays|lay|laying) over\b`, "overlay applied"},
	{`\bleast sure kind\b`, "unverified figure"},
	{`\bhair below nothing\b|\bwhat never comes\b|\bnever comes\b`, "slightly negative, does not occur"},
	{`\b(within|beyond) at (least|most)\b`, "a grammatical sentence: needs at least 2: OK"},
	{`\b[Ii]ssue \d`, "nothing: the reason itself"},
}

// wordsExempt are files in which such words have to stand: this list, older
// names, and what people type.
var wordsExempt = map[string]bool{"marinecalc/words_test.go": true, "marinecalc/CHANGELOG.md": true,
	"marinecalc/rules/data/tables/search-words.json": true, "marinecalc/internal/overview/find_test.go": true,
	"marinecalc/internal/boat/renamed.go": true, "marinecalc/internal/boat/renamed_test.go": true}

func TestTheTradesOwnWords(t *testing.T) {
	alone(t)
	var bad []*regexp.Regexp
	for _, w := range notTheTrades {
		bad = append(bad, regexp.MustCompile(`(?i:`+w.pattern+`)`))
	}
	read, clean := 0, map[string]bool{}
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name := filepath.ToSlash(strings.TrimPrefix(path, ".."+string(filepath.Separator)))
		if d.IsDir() {
			if n := d.Name(); n == "node_modules" || n == ".git" || n == "build" || n == "golden" {
				return filepath.SkipDir
			}
			return nil
		}
		switch filepath.Ext(name) {
		case ".go", ".json", ".js", ".mjs", ".html", ".css", ".md", ".ts":
		default:
			return nil
		}
		if wordsExempt[name] || strings.HasSuffix(name, "package-lock.json") {
			return nil
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		read++
		for n, line := range strings.Split(string(text), "\n") {
			if line = strings.TrimSpace(line); clean[line] {
				continue
			}
			clean[line] = true
			for i, re := range bad {
				if at := re.FindString(line); at != "" {
					clean[line] = false
					t.Errorf("%s:%d: %q; say %s", name, n+1, at, notTheTrades[i].say)
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if read < 200 {
		t.Fatalf("only %d files were read", read)
	}
}
