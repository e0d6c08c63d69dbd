package leader

import "math"

// vec is a place, a speed or a force: level away from the tip, and down.
type vec struct{ x, z float64 }

func (a vec) add(b vec) vec       { return vec{a.x + b.x, a.z + b.z} }
func (a vec) sub(b vec) vec       { return vec{a.x - b.x, a.z - b.z} }
func (a vec) times(k float64) vec { return vec{a.x * k, a.z * k} }
func (a vec) dot(b vec) float64   { return a.x*b.x + a.z*b.z }
func (a vec) length() float64     { return math.Sqrt(a.x*a.x + a.z*a.z) }
func (a vec) across() vec         { return vec{-a.z, a.x} }

// sym is a symmetric matrix: how fast a force falls with a shift, N/m.
type sym struct{ xx, xz, zz float64 }

func (m sym) times(v vec) vec { return vec{m.xx*v.x + m.xz*v.z, m.xz*v.x + m.zz*v.z} }

func (m sym) add(o sym) sym { return sym{m.xx + o.xx, m.xz + o.xz, m.zz + o.zz} }

// addAlong adds k in the direction of v times the square of v's length.
func (m *sym) addAlong(v vec, k float64) {
	m.xx += k * v.x * v.x
	m.xz += k * v.x * v.z
	m.zz += k * v.z * v.z
}
