package browser

import "testing"

// The page's policy really holds in a browser: script that is not the page's
// own does not run, and nothing can be fetched.
func TestPolicyHolds(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	b.forgive = true // each attempt below is logged as refused, which is the point
	breaches := eval[map[string]string](b, `(async () => {
		const refused = {};
		addEventListener('securitypolicyviolation', (e) => (refused[e.effectiveDirective] = e.blockedURI));
		await fetch('https://driveline.example.org/').then(() => (refused.fetched = 'yes'), () => {});
		const script = document.createElement('script');
		script.textContent = 'window.broken = true';
		document.body.append(script);
		const image = new Image();
		image.src = 'https://driveline.example.org/x.png';
		document.body.append(image);
		const style = document.createElement('div');
		style.setAttribute('style', 'color: red');
		await new Promise((done) => setTimeout(done, 100));
		if (window.broken) refused.broken = 'yes';
		return refused;
	})()`)
	for _, directive := range []string{"connect-src", "script-src-elem", "img-src", "style-src-attr"} {
		if _, ok := breaches[directive]; !ok {
			t.Errorf("nothing was refused under %s: %v", directive, breaches)
		}
	}
	if breaches["fetched"] != "" || breaches["broken"] != "" {
		t.Errorf("the policy let something through: %v", breaches)
	}
}
