// What stands for a joint on a line of the card, and what stands beside it.

package export

import (
	"cmp"
	"strings"

	"example.org/driveline/marinecalc/internal/boat/agree"
	"example.org/driveline/marinecalc/internal/setting"
	"example.org/driveline/marinecalc/sheet"
)

// takes puts on a line the torque that stands for its joint.
func (j *TorqueJoint) takes(s *setting.Standing) {
	if s.Text == "" {
		return
	}
	j.Torque, j.Source, j.Maker = s.Text, s.Source, s.Maker
	switch {
	case s.Without != nil && s.Without.Text != s.Text:
		j.Range = "without it " + s.Without.Text + ", " + s.Without.Source
	case s.Maker && !s.Listed && s.Own != "":
		j.Range = "calculated " + s.Own
	}
	j.Thread, j.Lubrication = cmp.Or(s.Thread, j.Thread), cmp.Or(s.Lubrication, j.Lubrication)
}

// disagree tells of figures of the boat file that are not the torque that stands and
// contradict each other, as of set screws that are seated to another.
func (j *TorqueJoint) disagree(list []agree.Disagreement) {
	for _, d := range list {
		if d.Code == agree.TwoTorques+j.Joint {
			j.Range = strings.Join(known("NOT SURE: "+d.Text, j.Range), " ")
		}
	}
}

// marks puts before what the torque gives what verdicts say against it.
func (j *TorqueJoint) marks(joint setting.Joint, s *setting.Standing, sheets map[string]*sheet.Sheet) {
	if j.Torque == "" {
		return
	}
	said, ofOwn := joint.Against(s)
	if text := ofOwn.Sentence(); text != "" {
		j.Range = strings.Join(known(j.Range, text), ": ")
	}
	if clamp, is := strings.CutPrefix(j.Range, "clamps "); is {
		switch {
		case s.Why != "": // at a torque that is not to be set
			j.Range = ""
		case said.Mark == setting.NotAsItStands:
			j.Range = "once that is put right, on sound faces and with sound bolts and nuts, it would clamp " + clamp
		}
	}
	j.Range = strings.Join(known(s.Do, j.Range), ". ")
	if s.Do == "" {
		j.bears(sheets, s.Judged && setting.AgainstTorque(joint.Row, of(sheets), "heeds").Text != "")
	}
	j.Range = strings.Join(known(said.Sentence(), j.Range), "; ")
	if s.Why != "" {
		j.Torque, j.Unsettled = "", setting.NotSettled(s.Why)
	}
}
