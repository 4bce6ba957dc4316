// One mount as a spring.

package mount

import "math"

// spring is one mount as the engine feels it: where it is from the centre of
// gravity, and its stiffness. The axes are forward, to port and up.
type spring struct {
	x, y, z    float64
	kx, ky, kz float64 // fore and aft, athwartships, up and down
	kyz        float64 // up and down by a movement athwartships: a leaning mount
	along      float64 // along the mount's axis, which is
	ay, az     float64 // this way
}

// leaning turns a mount's own stiffness, along and square to its axis, by the
// angle its axis leans toward the shaft line (side: where the mount stands,
// plus to port).
func (s *spring) leaning(along, square, angle, side float64) {
	if side == 0 {
		angle = 0
	}
	sin, cos := math.Sincos(math.Copysign(angle, -side)) // the axis leans away from its own side
	s.along, s.ay, s.az = along, sin, cos
	s.ky = along*sin*sin + square*cos*cos
	s.kz = along*cos*cos + square*sin*sin
	s.kyz = (along - square) * sin * cos
}

// moved is how the foot on a spring moves with the engine.
func (s *spring) moved(by *motion) (x, y, z float64) {
	return by[surge] + by[pitch]*s.z - by[yaw]*s.y,
		by[sway] + by[yaw]*s.x - by[roll]*s.z,
		by[heave] + by[roll]*s.y - by[pitch]*s.x
}

// lift is by how much more the spring carries when its foot moves so.
func (s *spring) lift(by *motion) float64 {
	_, y, z := s.moved(by)
	return -(s.kyz*y + s.kz*z)
}

// pressed is by how much more the spring is pressed along its axis when its
// foot moves so, and pushed how far it is sheared fore and aft, as forces.
func (s *spring) pressed(by *motion) (along, foreAndAft float64) {
	x, y, z := s.moved(by)
	return -s.along * (s.ay*y + s.az*z), s.kx * x
}

// stiffen adds the spring to the stiffness of the whole: BᵀkB, where B gives
// the foot's movement for each freedom, and kB the force on it.
func (s *spring) stiffen(k *matrix) {
	x, y, z := s.x, s.y, s.z
	forces := [freedoms][3]float64{
		surge: {s.kx, 0, 0},
		sway:  {0, s.ky, s.kyz},
		heave: {0, s.kyz, s.kz},
		roll:  {0, s.kyz*y - s.ky*z, s.kz*y - s.kyz*z},
		pitch: {s.kx * z, -s.kyz * x, -s.kz * x},
		yaw:   {-s.kx * y, s.ky * x, s.kyz * x},
	}
	for j := range forces {
		fx, fy, fz := forces[j][0], forces[j][1], forces[j][2]
		row := &k[j] // the matrix is symmetric
		row[surge] += fx
		row[sway] += fy
		row[heave] += fz
		row[roll] += y*fz - z*fy
		row[pitch] += z*fx - x*fz
		row[yaw] += x*fy - y*fx
	}
}

// springs holds the mounts of one engine without allocating.
type springs struct {
	all [Most]spring
	n   int
}

func (s *springs) stiffness() (k matrix) {
	for i := range s.n {
		s.all[i].stiffen(&k)
	}
	return k
}
