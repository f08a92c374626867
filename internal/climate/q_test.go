package climate
import ("testing";"math/rand/v2";"math";"ebbwell/internal/quantity";"fmt";"sort")
func TestMiss(t *testing.T){
	r := rand.New(rand.NewPCG(2026, 12))
	type c struct{in,all int; bias, sq float64}
	m:=map[string]*c{}
	add:=func(k string,in bool,e float64){ if m[k]==nil{m[k]=&c{}}; m[k].all++; if in{m[k].in++}; m[k].bias+=e; m[k].sq+=e*e }
	for range 1500 {
		a := newSynthetic(r)
		var tests []Test
		for range 2 + r.IntN(4) {
			s := a.session(t, r)
			rate := a.sweats(t, r, s) + quantity.LitresPerHour(weighingSpread*r.NormFloat64())
			tests = append(tests, Test{Session: s, Rate: max(rate, 0.05), U: weighingSpread})
		}
		for _, l := range LeaveOneOut(a.athlete, tests) {
			e:=math.Log(float64(tests[l.Test].Rate)/l.Basis.Rate.Value)
			x:=l.Basis.Balance
			add(fmt.Sprintf("need %03d",int(math.Min(7,math.Floor(x.Need/100)))*100),l.Inside,e)
			add(fmt.Sprintf("floor %v",x.OnFloor()),l.Inside,e)
			add(fmt.Sprintf("cyclist %v",a.cyclist),l.Inside,e)
			add(fmt.Sprintf("unc %v",x.Uncompensable()),l.Inside,e)
			add(fmt.Sprintf("rate %.1f",math.Min(3,math.Floor(float64(tests[l.Test].Rate)*5)/5)),l.Inside,e)
			add(fmt.Sprintf("n %d",len(l.Basis.Calibration.Used)),l.Inside,e)
			add(fmt.Sprintf("earned %v",l.Basis.Calibration.Earned),l.Inside,e)
			add(fmt.Sprintf("grade %v",l.Basis.Grade.Code()),l.Inside,e)
			w,_:=x.Wettedness()
			add(fmt.Sprintf("wet %.1f",math.Min(1.2,math.Floor(w/x.WettednessMax*5)/5)),l.Inside,e)
		}
	}
	var ks []string; for k:=range m {ks=append(ks,k)}; sort.Strings(ks)
	for _,k:=range ks { v:=m[k]; t.Logf("%-14s n %4d cover %.1f bias %+.3f rms %.3f",k,v.all,100*float64(v.in)/float64(v.all),v.bias/float64(v.all),math.Sqrt(v.sq/float64(v.all))) }
}
