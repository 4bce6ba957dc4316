package workplan

import "example.org/driveline/marinecalc/quantity"

// Input is what work-plan takes.
type Input struct {
	Today       string         // year-month-day, as all dates here
	Remedies    []ChosenRemedy // nil: as the fault finding says; empty: nothing is to be done
	Windows     []WorkWindow
	Lies        string        // "afloat" or "ashore", on days that no window names
	HoursPerDay quantity.Time // of one person
	DayBegins   string        // hour:minute
	Hands       int
	ReadyBy     string // "" when no date is set
	Reserve     quantity.Time
	PartsInHand []PartInHand
	// HoursPerSeason of the engine; 0: not known.
	HoursPerSeason quantity.Time
}

// ChosenRemedy is one piece of work that is to be done.
type ChosenRemedy struct{ Remedy string }

// WorkWindow is a run of days.
type WorkWindow struct {
	From, To, Kind, Note string
	MostDays             int // without drive, of days in which she must be ready
}

// PartInHand is what the person knows of a part better than the rules.
type PartInHand struct {
	Part         string
	OnBoard      bool
	MakerAsks    bool
	LeadTime     quantity.Time  `unset:"NaN"` // from order to arrival; NaN: as usual
	Price        quantity.Money `unset:"NaN"`
	Deposit      quantity.Money `unset:"NaN"`
	ReturnWithin quantity.Time  `unset:"NaN"` // from its arrival
}

// Result is what work-plan gives.
type Result struct {
	Finish       string // day on which the last dated step ends
	FinishLong   string // the same when every step takes its long time
	Open         string // how long and when she lies open
	OpenWaits    string
	OpenFrom     string
	OpenTo       string
	HaulOut      string
	LiftedOn     string // "" where she runs to no lift
	InTime       string
	ReserveLeft  string // days left before a launch, a lift, the date wanted
	FirstOrder   string
	Now          string
	Elsewhere    string
	WaitsForPart string
	Trouble      string
	CriticalPath string
	Planned      string // the remedies by their titles
	Suspected    string // work for what nobody has found yet
	CoreReturn   string
	Quoted       quantity.Money
	NotQuoted    string
	Start        string
	HoursTotal   quantity.Time
	StepsPlanned int
	Work         [20]WorkLine
	Schedule     [mostSteps]ScheduledStep
	DayByDay     [128]DayLine
	WhileOpen    [24]BaredWork
	Shopping     [64]ShoppingLine
	Tools        [96]ToolLine
	Dangers      [44]DangerLine
	hazards      []string // ids of cautions
	procedures   []string // ids of the remedies
}

// Procedures are the pieces of work that are planned.
func (r Result) Procedures() []string { return r.procedures }

// Hazards are the cautions of the plan as a whole: that the shaft stays still
// where it is to, and that she lies without drive where the plan opens her. Those
// of the steps stand in its list of dangers.
func (r Result) Hazards() []string { return r.hazards }

const mostSteps = 96

// ScheduledStep is one line of the schedule.
type ScheduledStep struct {
	Step     string
	Phase    string
	Start    string
	End      string
	Hours    quantity.Time
	Place    string
	Slack    quantity.Time
	Critical string
	Hazards  string // signal words and what can hurt, gravest first
	Once     string // what must be so before it, of what the same work cures
	Waits    string // why it has no date
	How      string
	For      string
	Row      string // id of the step
}

// ToolLine is a tool with what it is for.
type ToolLine struct{ Tool, ForSteps string }

// DangerLine is what can hurt, and in which steps.
type DangerLine struct{ Signal, Text, AtSteps string }

// WorkLine is a piece of work and why it is planned.
type WorkLine struct{ Work, Because string }

// DayLine is a step, or the part of it that is done in one day.
type DayLine struct{ Date, From, To, Step, Place string }

// BaredWork is work that a step of the plan lays bare.
type BaredWork struct {
	Work   string
	AtStep string
	More   quantity.Time // hours of its steps that the plan lacks
	Parts  string
}

// ShoppingLine is one thing to have on board.
type ShoppingLine struct {
	Part     string
	Amount   string
	Size     string
	OrderBy  string // a day, or a code
	NeededOn string
	LeadTime quantity.Time
	Price    quantity.Money
	ReturnBy string
	ForSteps string
	Remark   string
}

// The codes of OrderBy where there is no day, for which the schema of work-plan has
// the words.
const (
	onBoard = "on-board"
	undated = "undated"
)
