package marinecalc_test
import ("testing";"example.org/driveline/marinecalc";"example.org/driveline/marinecalc/internal/testboat")
func BenchmarkZZPlain(b *testing.B){
 boat:=testboat.Demo(b,"kittiwake")
 for b.Loop() { marinecalc.Check(boat,marinecalc.Options{NoRanges:true}) }
}
func BenchmarkZZBrief(b *testing.B){
 boat:=testboat.Demo(b,"kittiwake")
 for b.Loop() { marinecalc.Check(boat,marinecalc.Options{NoRanges:true,Brief:true}) }
}
