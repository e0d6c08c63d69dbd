// Package oxygen says below which depth a lake's water may be without the oxygen a fish
// needs, when nobody measured it: from readings of temperature alone, and from mud on the
// anchor that is black or smells.
//
// It proves nothing and takes no water away; what to make of doubtful water is for its
// caller. It does not say how likely a lake is to run short at all. Of the layered columns
// that it names a depth in, 0 to 27 % of a set never fell under 5 mg/L, and 48 % in two
// Virginia reservoirs (to one of them oxygen is given, from memory). There it doubts
// three quarters of the depth for nothing, and in half of the columns all of the cool
// water: TestNeverShort. In lakes of 20 m and more a third of the lakes never fell under
// it, in others a tenth; so the words may be softer there, and softer still where the
// water is clear: see LakeClass.
//
// # The rule
//
// From the mixed layer down to the coldest reading, water falls by so many degrees. For 5
// mg/L Low is 0.80 of the depth at which 15 % of that fall is done, Best 0.85 of that at
// half of it, High 1.07 of that at 90 %; factor.go has the factors for 3 to 7 mg/L. They
// are quantiles over the layered columns of 2007 in the National Lakes Assessment and of
// Paul, Peter and Beaverdam, each lake counting once. The shares are round ones whose loss
// on those is near the least. The rule asks for no break, only for a fall of 1.5 C. Where
// oxygen was measured it keeps to that. Readings that end above the deepest water make the
// fall less and Low shallower.
//
// # What was reached
//
// Oxygen hidden, over layered columns that cross 5 mg/L, in lakes without a part in the
// fit. Safe: Low is at or above the first crossing, %. Given: away in the median, crossing
// less Low, m. Held: the crossing lies between Low and High, %. Left: some of the water at
// or under 19 C, where there is any, lies above Low, %. Good: oxygen enough where the fly
// starts, a foot inside that water or at Low if it is shallower, %.
//
//	                         all readings                   8 even readings
//	                     n  safe given held left good   safe given held left good
//	NLA 2017           351    89  1.35   81   14   92     89  1.34   81   14   91
//	NLA without marks   69    93  1.23   83   14   95     94  1.28   83   17   95
//	Cascade            261    96  1.14   90   34   97     95  1.11   89   35   96
//	Virginia            80    90  1.94   84    5   91     91  1.69   85    6   91
//
// Each lake counted once, 89, 93, 92 and 91 % are safe; the worst lake that was read at
// least ten times is a pond of 8 m in Cascade, with 83 %.
//
// With 5 readings 89, 88, 97 and 92 % are safe. The low end of the metalimnion's top by
// layers.Find is safe in 87, 78, 99 and 82 % (8 readings: 87, 75, 100 and 84), its best
// value in 77, 77, 92 and 74 %. A foot inside the cool water, whatever Low is, there is
// oxygen enough in 49, 62, 70 and 38 %. At any need from 3 to 7 mg/L, 89 % or more of each
// set are safe, but at 6 and 7 Virginia gives away 2.2 and 2.5 m: TestNeeds.
//
// Fitted casts included, 90, 98 and 93 % are safe in NLA, Cascade and Virginia, and 1.29,
// 2.58 and 2.01 m given away. In Paul and Peter alone it is 3.2 m: oxygen there reaches far
// into the break, and nothing in their temperatures was found to say so.
//
// # Where it is less safe
//
// Held-out casts, each lake counting once: safe in 98 % to mid June, 92 from there to mid
// August, 79 to mid September, 90 after; in 82 % where the coldest water is 20 C or more
// and 85 where it is 15 to 20; in 83 % where the deepest reading is above 8 m, 95 below:
// TestSeasons.
//
// # Where no depth is named
//
// Columns that fall by less than 1.5 C, which have been in touch with the air. Of 205 mixed
// ones a quarter ran short all the same, half of these in the last 0.7 m, and of 47 with a
// skin only nearly half, in the last metre: TestNotLayered. Inverse columns, as under ice:
// oxygen then fails from the bottom up, late in winter (common practice), but how far up
// was not measured. Columns whose readings end in the warm water: nothing is known below.
//
// # Right after a turnover
//
// Cold water in one layer from top to bottom, 12 C or less, has been in touch with the air
// lately, and no depth is named in it, though it may fall by 1.5 C in all and black mud may
// still tell of the summer: of 15 such columns, from 8 lakes, one fell under 5 mg/L, at nine
// tenths of its depth: TestTurnedOver. Layered ones are not so safe: of 15 in spring, from
// their mixed layer on as cold, 6 fell under it, some at a quarter of the depth.
//
// # Black mud
//
// The water over black mud is taken to hold 1 mg/L or less (assumed, untested). Factors of
// that depth are fitted in the same way, and the shallower answer is taken. Read down to
// where oxygen is at 1 mg/L, Low is safe in 96, 91, 100 and 96 % of the four sets, and
// without the word of mud in 74, 66, 88 and 67. In columns that are not layered, where mud
// is all there is to go by, it is safe in 73 % of 30.
//
// # Tried without gain
//
// By the mean pinball loss of Low in the held-out NLA, Cascade and Virginia, in metres; that
// of the rule is 0.29, 0.16 and 0.28.
//
//   - The date: 0.29, 0.16, 0.27. Within a lake oxygen fails higher up as summer goes on,
//     from lake to lake the date says little, and the fitted casts give it a weight that
//     makes no difference. A rise of 0.2 % a day would leave the held-out casts safe in some
//     88 % in late summer and 90 or more before and after, but nothing fitted asks for so
//     much. So no date is asked for, nor on which half of the world the lake lies.
//   - The coldest temperature: 0.28, 0.17, 0.28, and 74 % safe in Cascade. With no effect
//     under 10 C: 0.28, 0.16, 0.28, safer over warm bottoms and less so over cold ones.
//   - The metalimnion's top alone 0.31, 0.19, 0.33; with its bottom 0.30, 0.17, 0.27. The
//     mixed layer's depth 0.30, 0.17, 0.33. The thermocline, its fall, its rise of density
//     and the lake's depth add nothing to these.
//   - Chances per metre from the fall, the gradient, the season and others, twelve in all,
//     added up from the surface: 0.28, 0.21, 0.27, and 66 % safe in Cascade.
//
// Clarity and colour of the water are in none of these data; a rule on them would be a
// guess, so there is none.
//
// # Sources
//
// U.S. EPA, National Lakes Assessments of 2007 and 2017 (NLA); Carpenter et al., Cascade
// Project at NTL-LTER, EDI knb-lter-ntl.352; Carey et al., EDI edi.198 (Virginia): lakes of
// the USA, most at their deepest place, late March to October, nearly all May to September.
// A lake may be in both surveys. The tables:
//
//	go test ./profile/oxygen -v
package oxygen
