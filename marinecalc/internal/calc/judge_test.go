package calc_test

import (
	"testing"

	"example.org/driveline/marinecalc"
	"example.org/driveline/marinecalc/internal/testboat"
)

// A maker's figure for a limit, once in the boat file, is what the verdict
// goes by, and the verdict says so.
func TestMakersLimitWins(t *testing.T) {
	gaps := `"couplingKind": "rigid", "couplingDiameter": "100 mm", "readings": [{"clock": "0°", "gap": "0.40 mm ± 0.001 mm"}, {"clock": "90°", "gap": "0.30 mm ± 0.001 mm"}, {"clock": "180°", "gap": "0.20 mm ± 0.001 mm"}, {"clock": "270°", "gap": "0.30 mm ± 0.001 mm"}]`
	limit := testboat.Limit(t, "coupling-alignment", "gapPerDiameter", 0.001)
	plain := testboat.Run(t, "coupling-alignment", `{`+gaps+`}`, marinecalc.Options{}).Verdict(limit)
	if plain.Word != "beyond" || plain.Authority != "published" {
		t.Fatalf("without the maker: %+v", plain)
	}
	b := testboat.Read(t, `{"name": "Test", "makersFigures": [{"of": "`+limit+`", "value": 0.01, "source": {"document": "Coupling sheet", "clause": "p. 3"}}]}`)
	made := testboat.Run(t, "coupling-alignment", `{`+gaps+`}`, marinecalc.Options{Boat: b}).Verdict(limit)
	if made.Word != "within" || made.Authority != "maker's figure" || made.Source != "Coupling sheet, p. 3" {
		t.Errorf("with the maker: %+v", made)
	}
}
