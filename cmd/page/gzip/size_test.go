package gzip_test

import (
	"bytes"
	standard "compress/gzip"
	"testing"

	"example.org/driveline/cmd/page/assemble"
	"example.org/driveline/cmd/page/gzip"
)

// BenchmarkPack packs the module that the page holds, and reports its size
// beside that of the standard library at its best.
func BenchmarkPack(b *testing.B) {
	root, err := assemble.Root()
	if err != nil {
		b.Fatal(err)
	}
	module, err := assemble.Module(root)
	if err != nil {
		b.Fatal(err)
	}
	var own []byte
	for b.Loop() {
		own = gzip.Pack(module)
	}
	var theirs bytes.Buffer
	w, err := standard.NewWriterLevel(&theirs, standard.BestCompression)
	if err != nil {
		b.Fatal(err)
	}
	if _, err := w.Write(module); err != nil {
		b.Fatal(err)
	}
	if err := w.Close(); err != nil {
		b.Fatal(err)
	}
	b.ReportMetric(float64(len(own)), "own-bytes")
	b.ReportMetric(float64(theirs.Len()), "level9-bytes")
	b.ReportMetric(100*(1-float64(len(own))/float64(theirs.Len())), "saved-%")
}
