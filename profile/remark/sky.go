package remark

// Sky gathers what was noted of the sky.
func Sky(text string) Facts { return read(text, sky) }

// sky are the words that are understood. The longest that fits is taken, so that a longer
// one may also take words out: a rainbow is no rain. What any storm brings, wind or
// lightning, is worth its caution.
var sky = []word{
	{"dusk", Low, none}, {"dawn", Low, none}, {"twili", Low, none}, {"daybreak", Low, none},
	{"sunris", Low, none}, {"sunset", Low, none}, {"sundown", Low, none}, {"sunup", Low, none},
	{"sun low", Low, none}, {"low sun", Low, none}, {"sun down", Low, none},
	{"first light", Low, none}, {"last light", Low, none}, {"evening", Low, none},
	{"night", Low, none}, {"nite", Low, none}, {"midnight", Low, none}, {"last night", none, none},
	{"moonli", Low, none}, {"dark", Low, none}, {"dark cloud", Cloud, none}, {"dark gr", Cloud, none},

	{"sun", Bright, Cloud}, {"sunday", none, none},
	{"sunless", Cloud, none}, {"sunshower", Mixed, none},
	{"clear", Bright, Mixed}, {"cleer", Bright, Mixed}, {"clr", Bright, Mixed}, {"clearing", Mixed, none},
	{"bright", Bright, Mixed}, {"brite", Bright, Mixed}, {"blue sk", Bright, Mixed}, {"bluebird", Bright, Mixed},

	{"overc", Cloud, Mixed}, {"over cast", Cloud, Mixed}, {"ovrc", Cloud, Mixed}, {"ovc", Cloud, Mixed},
	{"cloud", Cloud, Bright}, {"clowd", Cloud, Bright}, {"cldy", Cloud, Bright}, {"cloudless", Bright, Mixed},
	{"high cloud", Mixed, none}, {"light cloud", Mixed, none},
	{"gray", Cloud, Mixed}, {"grey", Cloud, Mixed},
	{"dull", Cloud, none}, {"gloom", Cloud, none}, {"fog", Cloud, none}, {"haz", Mixed, none}, {"smok", Mixed, none},
	{"rain", Cloud, none}, {"rainbow", none, none}, {"drizz", Cloud, none}, {"shower", Cloud, none},
	{"snow", Cloud, none}, {"sleet", Cloud, none}, {"hail", Cloud, none},
	{"storm", Cloud | Thunder, none}, {"thund", Cloud | Thunder, none}, {"t storm", Cloud | Thunder, none}, {"tstorm", Cloud | Thunder, none},
	{"lightning", Cloud | Thunder, none}, {"lightening", Cloud | Thunder, none}, {"rumbl", Cloud | Thunder, none},

	{"chop", Chop, Calm}, {"whitec", Chop | Whitecaps, none}, {"white cap", Chop | Whitecaps, none}, {"white horse", Chop | Whitecaps, none}, {"squall", Chop | Whitecaps, none}, {"wave", Chop, Calm}, {"wavy", Chop, none},
	{"rough", Chop, none}, {"ripple", Chop, Calm}, {"riffle", Chop, Calm}, {"windy", Chop, none}, {"wind", none, Calm},
	{"calm", Calm, none}, {"glass", Calm, none}, {"mirror", Calm, none}, {"windless", Calm, none},

	// French
	{"orag", Cloud | Thunder, none}, {"tonnerre", Cloud | Thunder, none}, {"foudre", Cloud | Thunder, none},
	{"éclair", Cloud | Thunder, none}, {"éclairci", Mixed, none}, {"moutons", Chop | Whitecaps, none}, {"clapot", Chop, Calm},
	{"couvert", Cloud, Mixed}, {"nuag", Cloud, Bright}, {"gris", Cloud, Mixed}, {"brume", Cloud, none}, {"brouillard", Cloud, none},
	{"pluie", Cloud, none}, {"pluvieux", Cloud, none}, {"averse", Cloud, none}, {"neige", Cloud, none},
	{"soleil", Bright, Cloud}, {"ensoleil", Bright, Cloud}, {"dégagé", Bright, Mixed}, {"ciel clair", Bright, Mixed}, {"ciel bleu", Bright, Mixed},
	{"aube", Low, none}, {"crépuscule", Low, none}, {"soir", Low, none}, {"nuit", Low, none},
}
