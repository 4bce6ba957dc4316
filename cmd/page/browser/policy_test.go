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

// The worker has no more leave than the page: it can be made of the page's own
// script only, and neither fetches, nor opens a socket, nor takes in script
// from elsewhere, nor runs text as script.
func TestPolicyHoldsInTheWorker(t *testing.T) {
	b := newTab(t, 1280)
	b.open("")
	b.forgive = true // as above
	said := eval[map[string]string](b, `(async () => {
		const refused = {};
		const begin = (address) => new Promise((done) => {
			try {
				const worker = new Worker(address);
				worker.onmessage = ({ data }) => done(data);
				worker.onerror = () => done('refused');
				setTimeout(() => done('silent'), 3000);
			} catch {
				done('refused');
			}
		});
		const blob = (text) => URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
		refused.remote = await begin('https://driveline.example.org/w.js');
		refused.data = await begin('data:text/javascript,postMessage("ran")');
		return Object.assign(refused, await begin(blob(`+"`"+`(async () => {
			const said = { runs: 'yes' };
			addEventListener('securitypolicyviolation', (e) => (said[e.effectiveDirective] = 'refused'));
			await fetch('https://driveline.example.org/').then(() => (said.fetched = 'yes'), () => {});
			try { importScripts('https://driveline.example.org/x.js'); said.imported = 'yes'; } catch {}
			try { new Function('return 1')(); said.evaluated = 'yes'; } catch {}
			try { new WebSocket('wss://driveline.example.org/').onopen = () => (said.opened = 'yes'); } catch {}
			setTimeout(() => postMessage(said), 200);
		})()`+"`"+`)));
	})()`)
	for name, want := range map[string]string{"runs": "yes", "remote": "refused", "data": "refused", "connect-src": "refused", "fetched": "", "imported": "", "evaluated": "", "opened": ""} {
		if said[name] != want {
			t.Errorf("%s: %q, want %q; the worker says %v", name, said[name], want, said)
		}
	}
}
