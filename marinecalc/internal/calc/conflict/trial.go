package conflict

import (
	"fmt"
	"math"
	"strings"

	"example.org/driveline/marinecalc/internal/boat"
	"example.org/driveline/marinecalc/internal/calc/inputs"
	"example.org/driveline/marinecalc/internal/contract"
	"example.org/driveline/marinecalc/sheet"
)

// trialStage is the stage of the sea trial that is run as the dated readings are
// taken: at cruising speed, until the gland has settled.
const trialStage = "cruise"

// SeaTrial is the title of the value that a sea trial read.
const SeaTrial = "Sea trial"

// besideTrial tells of a reading of the boat that a later sea trial took again and
// found another: the sheet goes by the dated readings.
func (r *Finder) besideTrial(p *contract.Property, k *inputs.Known) {
	name, is := strings.CutPrefix(p.Boat, boat.LatestReading)
	if !is {
		return
	}
	raw, date, has := r.In.Request.Boat.TrialAt(trialStage, name)
	if !has || k.Date == "" || date <= k.Date {
		return
	}
	si, accuracy, err := inputs.Numeric(p, raw)
	if err != nil || math.Abs(si-k.Si) <= max(accuracy, (k.Factor.High-k.Factor.Low)/2, 1e-9*math.Abs(si)) {
		return
	}
	was := r.In.Show(p, si)
	r.Conflicts = append(r.Conflicts, sheet.Conflict{Code: sheet.TwoFigures, On: p.Name, Title: p.Title,
		Text: fmt.Sprintf("%s: %s, read %s, is used here; the sea trial of %s read %s at cruising speed, which is newer: log that as a reading.", p.Title, k.Text, k.Date, date, was),
		Values: []sheet.ConflictValue{
			{Input: p.Name, Title: p.Title, Text: k.Text, SI: k.Si, Origin: k.Origin, Date: k.Date},
			{Title: SeaTrial, Text: was, SI: si, Origin: sheet.FromBoat, Date: date},
		}})
}
