package workplan

import "example.org/driveline/marinecalc/quantity"

// Input is what work-plan takes.
type Input struct {
	Today       string         // year-month-day, as all dates here
	Remedies    []ChosenRemedy // nil: as the fault finding says; empty: nothing is to be done
	Windows     []WorkWindow
	Lies        string        // "afloat" or "ashore", on days that no window names
	HoursPerDay quantity.Time // of one person
	Hands       int
	ReadyBy     string // "" when no date is set
	PartsInHand []PartInHand
}

// ChosenRemedy is one piece of work that is to be done.
type ChosenRemedy struct{ Remedy string }

// WorkWindow is a run of days.
type WorkWindow struct{ From, To, Kind, Note string }

// PartInHand is what the person knows of a part better than the rules.
type PartInHand struct {
	Part     string
	OnBoard  bool
	LeadTime quantity.Time `unset:"NaN"` // from order to arrival; NaN: as usual
}

// Result is what work-plan gives.
type Result struct {
	Finish       string // day on which the last dated step ends
	FinishLong   string // the same when every step takes its long time
	InTime       string
	FirstOrder   string
	Now          string
	Elsewhere    string
	WaitsForPart string
	Trouble      string
	CriticalPath string
	Planned      string // the remedies by their titles
	Start        string
	HoursTotal   quantity.Time
	StepsPlanned int
	Schedule     [mostSteps]ScheduledStep
	Shopping     [48]ShoppingLine
	Tools        [96]ToolLine
	Dangers      [40]DangerLine
}

const mostSteps = 64

// ScheduledStep is one line of the schedule.
type ScheduledStep struct {
	Step     string
	Start    string
	End      string
	Hours    quantity.Time
	Place    string
	Slack    quantity.Time
	Critical string
	Dangers  string // signal words, with the numbers in the list of dangers
	Waits    string // why it has no date
	How      string
	For      string
}

// ToolLine is a tool with what it is for.
type ToolLine struct{ Tool, ForSteps string }

// DangerLine is what can hurt, and in which steps.
type DangerLine struct{ Danger, Signal, Text, AtSteps string }
