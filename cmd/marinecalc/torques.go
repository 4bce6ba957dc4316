package main

import (
	"cmp"
	"context"
	"flag"
	"fmt"
	"strings"

	"example.org/driveline/cmd/marinecalc/plain"
	"example.org/driveline/marinecalc"
)

// torques writes the torque card of a boat.
func (t *terminal) torques(args []string) error {
	var c common
	fs := flag.NewFlagSet("torques", flag.ContinueOnError)
	page := fs.String("page", "", "")
	files, o, err := t.boatsCommand("torques", args, &c, fs)
	if err != nil {
		return err
	}
	if len(files) > 1 {
		return marinecalc.Problems{{Where: "torques", What: fmt.Sprintf("takes one boat, and there are %d", len(files)), Allowed: "marinecalc torques BOATFILE [flags]"}}.Err()
	}
	b, err := t.readBoat("torques", files[0], o)
	if err != nil {
		return err
	}
	e, err := marinecalc.New()
	if err != nil {
		return err
	}
	card, err := e.TorqueCard(context.Background(), b, o)
	if err != nil {
		return err
	}
	if *page != "" {
		if err := t.Save("--page", *page, []byte(marinecalc.TorquePage(card))); err != nil {
			return err
		}
	}
	if c.json {
		return plain.JSON(t.out, card)
	}
	fmt.Fprintf(t.out, "%s: torque card\n", card.Boat)
	for _, j := range card.Joints {
		fmt.Fprintf(t.out, "\n%s\n", j.Title)
		for _, line := range [...][2]string{{"thread", j.Thread}, {"on it", j.Lubrication}, {"torque", cmp.Or(j.Stands(), "not known")}, {"", j.Range}, {"by", j.Source}, {"wanted", j.Wanted}, {"order", j.Order}, {"again", j.Again}, {"look at", j.Look}} {
			if line[1] != "" {
				const indent = "           "
				fmt.Fprintln(t.out, fmt.Sprintf("  %-9s", line[0])+strings.TrimPrefix(plain.Wrapped(indent, line[1]), indent))
			}
		}
	}
	return nil
}
