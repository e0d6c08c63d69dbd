package vector

import (
	"context"
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/chromedp"

	"coldseam/profile/expect"
)

// In a browser, on a page that allows nothing but the style, with the fonts that it has: texts
// stay within their pictures and off each other, have the ink of Style, and nothing is complained
// of.
func TestInBrowser(t *testing.T) {
	path, err := exec.LookPath("chromium")
	if err != nil {
		expect.Missing(t, "there is no chromium here (Debian: chromium)")
	}
	sum := sha256.Sum256([]byte(Style))
	page := `<!DOCTYPE html><html lang="en"><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'sha256-` +
		base64.StdEncoding.EncodeToString(sum[:]) + `'"><title>pictures</title><style>` + Style + `</style>`
	want := 0
	for _, p := range plans(t) {
		for _, svg := range pictures(p.plan) {
			page += "<figure>" + svg + "</figure>"
			want++
		}
	}
	file := filepath.Join(t.TempDir(), "page.html")
	if err := os.WriteFile(file, []byte(page), 0o600); err != nil {
		t.Fatal(err)
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND"))
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	ctx, stop := context.WithTimeout(context.Background(), time.Minute)
	defer stop()
	ctx, stop = chromedp.NewExecAllocator(ctx, options...)
	defer stop()
	ctx, stop = chromedp.NewContext(ctx)
	defer stop()
	if err := chromedp.Do(ctx); err != nil {
		expect.Missing(t, "chromium does not start: %v", err)
	}
	var complaints []string
	if err := chromedp.Listen(ctx, func(e any) {
		if e, ok := e.(*log.EventEntryAdded); ok {
			complaints = append(complaints, e.Entry.Text)
		}
	}); err != nil {
		t.Fatal(err)
	}
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(360, 640), chromedp.Navigate("file://"+file)); err != nil {
		t.Fatal(err)
	}
	found, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](inBrowser))
	if err != nil {
		t.Fatal(err)
	}
	if len(found) == 0 || found[0] != fmt.Sprintf("%d pictures", want) || len(found) > 1 || len(complaints) > 0 {
		t.Errorf("%d pictures written\n%s\n%s", want, strings.Join(found, "\n"), strings.Join(complaints, "\n"))
	}
}

const inBrowser = `(() => {
  const all = [...document.querySelectorAll('svg')], out = [all.length + ' pictures'];
  for (const svg of all) {
    const high = svg.viewBox.baseVal.height, wide = svg.viewBox.baseVal.width, texts = [...svg.querySelectorAll('text')].map(t => [t.textContent, t.getBBox()]);
    texts.forEach(([a, p], i) => {
      if (p.x < 0 || p.x + p.width > wide || p.y < -2 || p.y + p.height > high + 2) out.push(a + ' is outside');
      for (const [b, q] of texts.slice(0, i))
        if (p.x < q.x + q.width && q.x < p.x + p.width && p.y + 4 < q.y + q.height - 3 && q.y + 4 < p.y + p.height - 3) out.push(a + ' lies on ' + b);
    });
    if (texts.length && getComputedStyle(svg.querySelector('text')).fill !== 'rgb(20, 30, 40)') out.push('not in ink');
    if (svg.getBoundingClientRect().width > 360) out.push('wider than the phone');
  }
  return out;
})()`
