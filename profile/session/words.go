package session

// What is told at the anchor. The sentences about readings and depths are package
// report's; these are the talk's own.
const (
	numberPrompt   = "Number, then Enter:"
	typeHint       = "Type the temperature and Enter; or depth and temperature (12 68). undo, skip, stop, help."
	nothingToUndo  = "There is nothing to take back yet."
	mustBeAnswered = "This one must be answered before the drop goes on."

	helpTyping = `Temperature and Enter: the reading at the depth asked for. Depth and temperature (12 68): a reading at a depth of your own; a depth that was read before can be put right so. "bottom: 24 ft" or another line of a page: notes it. undo: takes the last reading back. skip: passes the depth over. stop: ends, with the plan.`

	helpChoice = "Type the number that stands before an answer, then Enter. skip: leaves the question. stop: ends the drop."
	helpOffer  = "Type the number that stands before an answer, then Enter. skip: leaves what was cut off for later. stop: ends, and nothing is begun."
	helpBottom = `The depth of water under the boat, such as 24 or 24 ft: by the marks on the line once its weight touches bottom, or by a sounder. Enter alone or skip: not known. stop: ends.`
	helpTwice  = "1: the older reading is left out. 2 or skip: both stay. undo: takes the new one back. stop: both stay, and the drop ends with the plan."
	helpFailed = "Try again when there is room, or the card is back; another folder: the drop goes on there. End it, or stop, once you have copied the readings down: nothing is given up before."
	helpFolder = "A folder on another disk or stick, such as ~/drops. Enter alone or skip: back to the choices."

	listenHelp    = "The probe's first lines tell what they hold. Enter: type the readings instead. stop: ends."
	notWaiting    = "Not waiting for the probe: the readings are typed."
	notUnderstood = "The probe's lines could not be understood, so the readings are typed. What the lines hold can be said with --layout, e.g. --layout \"depth m, temp C\"."
	mustState     = "A probe that is lowered without stopping must state its depth, and this one does not: hold it at one depth after the other instead."
	lineLeftOut   = "The probe states its own depth: what is noted of marks, bulb and line angle is left out."

	helpDepths = "Lower the probe to about the depth asked for and hold it still: its reading is taken when it has settled. Enter takes it at once. Depth and temperature (12 68): a reading by hand. undo, skip and stop as ever."
	helpHung   = "Lower the probe to the depth asked for, then Enter; or type the depth at which it hangs, then Enter. Its reading is taken when it has settled; Enter takes it at once. Depth and temperature (12 68): a reading by hand. undo, skip and stop as ever."

	lowerEvenly = "Lower the probe slowly and evenly to the bottom, a foot (30 cm) in two seconds or slower, then draw it up as slowly. Enter when it is up again, or at the bottom."
	helpCast    = "Enter ends the cast."
)
