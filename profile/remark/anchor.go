package remark

// Anchor gathers what was noted of what came up on the anchor.
func Anchor(text string) Facts { return read(text, mud) }

// mud are the words of mud without oxygen: it is black, or smells of rotten eggs (common
// practice).
var mud = []word{
	{"black", BlackMud, none}, {"smel", BlackMud, none}, {"stink", BlackMud, none}, {"stank", BlackMud, none},
	{"rotten", BlackMud, none}, {"sulf", BlackMud, none}, {"sulph", BlackMud, none},
}
