package remark

// Colour gathers what was noted of the colour of the water.
func Colour(text string) Facts { return read(text, colour) }

// colour are the words that are understood. Others, stained or tea, say nothing of algae.
var colour = []word{
	{"clear", ClearWater, none}, {"cleer", ClearWater, none}, {"clearing", none, none}, {"clear green", ClearWater, none},
	{"gin", ClearWater, none}, {"crystal", ClearWater, none},
	{"green", GreenWater, none}, {"alga", GreenWater, none}, {"bloom", GreenWater, none}, {"pea soup", GreenWater, none},
}
