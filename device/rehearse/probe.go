package rehearse

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"math/rand/v2"
	"strconv"
	"sync"
	"time"
)

// ErrPulled is what the first Read gives after the cable was pulled.
var ErrPulled = errors.New("input/output error: the probe's cable was pulled out")

// ErrBusy is what Open gives while the probe is open.
var ErrBusy = errors.New("the probe is already open")

// Probe is a simulated probe on its cable. Its methods may be called from any goroutine.
type Probe struct {
	o      Options
	period time.Duration
	start  time.Time // of the lake's clock

	mu     sync.Mutex
	sensor sensor
	at     time.Duration // how far the sensor was taken, on the lake's clock since start
	line   uint64        // number of the line that comes next
	port   *port         // nil while nothing is open
	opens  uint64
	heard  time.Duration // when what the last Read began with was said
	backAt time.Duration // when a pulled cable can be opened again
}

// New lets a probe float at the surface, still as warm as the air, and starts the lake's
// clock at the wall's time.
func New(o Options) *Probe {
	o = o.whole()
	return &Probe{
		o: o, period: duration(o.PeriodS), start: time.Now(), line: 1,
		sensor: sensor{lake: o.Lake, tauS: o.TauS, speedMps: o.SpeedMps, tempC: o.Lake.airC},
	}
}

// Now is the lake's clock: the time of New plus Speed times what passed since on the
// wall's monotonic clock.
func (p *Probe) Now() time.Time { return p.start.Add(p.elapsed()) }

func (p *Probe) elapsed() time.Duration {
	return time.Duration(float64(time.Since(p.start)) * p.o.Speed)
}

// Heard is when, on the lake's clock, that was said with which the last Read began: the
// time of a line, however late a busy machine came to read it.
func (p *Probe) Heard() time.Time {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.start.Add(p.heard)
}

// Lower pays out or takes in line until the probe is depthM metres down, the surface and
// the bottom at most; it returns at once and the probe gets there at SpeedMps. NaN
// changes nothing.
func (p *Probe) Lower(depthM float64) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if math.IsNaN(depthM) {
		return
	}
	now := p.advance()
	p.sensor.move((now - p.at).Seconds())
	p.at = now
	p.sensor.targetM = min(max(depthM, 0), p.o.Lake.bottomM)
}

// Depth is how deep the probe truly is now, m.
func (p *Probe) Depth() float64 {
	p.mu.Lock()
	defer p.mu.Unlock()
	now := p.advance()
	s := p.sensor // a copy: asking must not change what the lines say
	s.move((now - p.at).Seconds())
	return s.depthM
}

// Open plugs the cable in and switches the probe on, as opening a serial port does. A
// Read of it returns a few bytes at a time, as they came, (0, io.EOF) after about 100 ms
// of silence, and os.ErrClosed after Close; what is written is ignored. What was not
// read is kept up to 4096 bytes, later lines are lost. The error is ErrBusy while the
// probe is open, and fs.ErrNotExist while the cable is pulled; a pulled port need not
// be closed first.
func (p *Probe) Open() (io.ReadWriteCloser, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	now := p.advance()
	if p.port != nil {
		return nil, ErrBusy
	}
	if now < p.backAt {
		return nil, fmt.Errorf("the probe's cable is pulled out: %w", fs.ErrNotExist)
	}
	r := random(p.o.Seed, bootStream+p.opens)
	p.opens++
	p.port = &port{probe: p, left: 240 + r.IntN(241), closed: make(chan struct{})}
	if p.o.Faults.Boot {
		p.port.put(noiseBytes(12, r) + "cable probe 1.2, 1 sensor found\r\n")
	}
	if p.o.StatesDepth {
		p.port.put("depth_m,temp_c\r\n")
	}
	return p.port, nil
}

// advance says every line that has come due, and gives the time on the lake's clock.
// Between lines the sensor is taken only by a Lower, so that nothing else rounds.
func (p *Probe) advance() time.Duration {
	now := p.elapsed()
	for due := p.due(); due <= now; due = p.due() {
		p.sensor.move((due - p.at).Seconds())
		if p.o.HaulIn && p.sensor.depthM > p.o.Lake.bottomM-atBottomM {
			p.sensor.targetM = 0
		}
		p.at = due
		p.say()
		p.line++
	}
	return now
}

// atBottomM is how near to the bottom counts as touching it, m.
const atBottomM = 0.1

func (p *Probe) due() time.Duration { return time.Duration(p.line) * p.period }

// say sends the line that is due, if anybody listens.
func (p *Probe) say() {
	if p.port == nil || p.o.Faults.Quiet && quiet(p.o.Seed, p.at) {
		return
	}
	if p.port.left--; p.o.Faults.Pulled && p.port.left < 0 {
		p.port.pulled, p.port.waiting, p.port.said = true, nil, nil
		p.port, p.backAt = nil, p.at+pulledFor
		return
	}
	r := random(p.o.Seed, p.line)
	temp := noisy(p.sensor.tempC, p.o.NoiseC, r)
	depth := noisy(p.sensor.depthM, p.o.DepthNoiseM, r) + ","
	if !p.o.StatesDepth {
		depth = ""
	}
	p.port.put(p.o.Faults.spoil(depth, temp, r))
}

func noisy(v, sd float64, r *rand.Rand) string {
	v = math.Round((v+sd*r.NormFloat64())*100)/100 + 0 // plus 0: never "-0.00"
	return strconv.FormatFloat(v, 'f', 2, 64)
}
