package contract

import (
	"bytes"
	"encoding/json"
	"fmt"
	"testing"
)

// largestBoat is a boat file with as many readings as it may have, each as
// rich as one that names the gaps and rim steps of eight places, and a note.
func largestBoat(tb testing.TB) []byte {
	gaps := ""
	for i := range 8 {
		gaps += fmt.Sprintf(`,{"clock":"%d°","gap":"0.%02d mm","turn":"%d°"}`, 45*i, 30+i, 90*(i%4))
	}
	steps := bytes.ReplaceAll([]byte(gaps), []byte(`"gap"`), []byte(`"step"`))
	var b bytes.Buffer
	b.WriteString(`{"format":1,"name":"Wren","readings":[`)
	for i := range MaxReadings {
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, `{"date":"20%02d-%02d-%02d","engineHours":"%d h","couplingGaps":[%s],"couplingSteps":[%s],"dripRate":"12 drips/min","note":"%01000d"}`,
			i/336%100, i/28%12+1, i%28+1, i, gaps[1:], steps[1:], i)
	}
	b.WriteString("]}")
	if each := b.Len() / MaxReadings; each < 1800 || each > readingBytes {
		tb.Fatalf("a rich reading has %d bytes", each)
	}
	return b.Bytes()
}

func TestTheLargestBoatIsReadable(t *testing.T) {
	d := openBoat(t)
	if n := d.Root.Child("readings").MaxItems; n != MaxReadings {
		t.Errorf("the boat's schema allows %d readings", n)
	}
	text := largestBoat(t)
	v, problems := Decode(text)
	if problems = append(problems, d.Check(v)...); len(problems) > 0 {
		t.Fatal(problems[0])
	}
	// In a request it stands beside others, and a table of readings is a text as long.
	request, err := json.Marshal(map[string]any{"ask": "add-readings", "csv": string(text[:len(text)/2])})
	if err != nil {
		t.Fatal(err)
	}
	if _, problems := Decode(request); len(problems) > 0 {
		t.Error(problems)
	}
}

// BenchmarkLargestBoat reads the largest boat file and holds it against its
// contract.
func BenchmarkLargestBoat(b *testing.B) {
	d, err := OpenDocument("boat")
	if err != nil {
		b.Fatal(err)
	}
	text := largestBoat(b)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		v, problems := Decode(text)
		if problems = append(problems, d.Check(v)...); len(problems) > 0 {
			b.Fatal(problems[0])
		}
	}
}

// A long text costs no more than its length where it is refused.
func TestALongTextIsRefusedShortly(t *testing.T) {
	long := string(bytes.Repeat([]byte("x"), MaxBytes/2))
	c, err := OpenCalculation("gland-heat")
	if err != nil {
		t.Fatal(err)
	}
	for _, input := range []any{
		map[string]any{"shaftDiameter": long}, map[string]any{"water": long}, map[string]any{long: 1}, map[string]any{"dripRate": long, "packing": long},
	} {
		problems := c.CheckInput(input)
		if len(problems) == 0 {
			t.Error("it is let through")
		}
		for _, p := range problems {
			if n := len(p.What) + len(p.Allowed) + len(p.Hint); n > 4000 {
				t.Errorf("%d bytes are said of it", n)
			}
		}
	}
}
