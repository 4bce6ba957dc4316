module example.org/driveline

go 1.26.0

toolchain go1.26.8

require (
	github.com/arran4/golang-ical v0.3.4
	github.com/bcicen/go-units v1.0.5
	github.com/chromedp/cdproto v0.159.0
	github.com/chromedp/chromedp v0.23.0
	github.com/evanw/esbuild v0.28.2
	github.com/expr-lang/expr v1.17.8
	github.com/google/go-cmp v0.7.0
	github.com/santhosh-tekuri/jsonschema/v5 v5.3.1
	github.com/tetratelabs/wazero v1.12.0
	golang.org/x/term v0.48.0
	gonum.org/v1/gonum v0.17.0
)

require (
	github.com/BurntSushi/toml v1.4.1-0.20240526193622-a339e1f7089c // indirect
	github.com/Knetic/govaluate v3.0.0+incompatible // indirect
	github.com/bcicen/bfstree v1.0.0 // indirect
	github.com/go-json-experiment/json v0.0.0-20260213210345-44df1a37e875 // indirect
	golang.org/x/exp/typeparams v0.0.0-20231108232855-2478ac86f678 // indirect
	golang.org/x/mod v0.41.0 // indirect
	golang.org/x/sync v0.23.0 // indirect
	golang.org/x/sys v0.50.0 // indirect
	golang.org/x/tools v0.51.0 // indirect
	honnef.co/go/tools v0.8.2 // indirect
)

tool honnef.co/go/tools/cmd/staticcheck
