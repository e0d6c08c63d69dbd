package session

import "strings"

// What is told at the anchor. The sentences about readings and depths are package
// report's; these are the talk's own.
const (
	helpUnits      = "Type the number of your answer, then Enter: feet or metres is never guessed. stop ends."
	numberPrompt   = "Number, then Enter:"
	nothingToUndo  = "There is nothing to undo yet."
	mustBeAnswered = "This question needs an answer before the drop can go on."

	helpTouch  = "Touch one of the answers."
	helpChoice = "Type the number of your answer, then Enter. skip leaves the question, stop ends the drop."
	helpOffer  = "Type the number of your answer, then Enter. skip leaves the unfinished drop for later, stop ends without starting a new one."
	helpTwice  = "1: the old reading is left out. 2 or skip: both stay. undo removes the new one. stop: both stay, and the drop ends with the plan."
	helpFailed = "Try again once there is room, or the card is back in. In another folder the drop goes on there. End it, or type stop, once you have copied the readings down; until then nothing is lost."
	helpFolder = "A folder on another disk or stick, such as ~/drops. Enter or skip goes back to the choices."

	listenHelp    = "The probe's first lines show what they hold. Enter: type the readings instead. stop ends the drop."
	notWaiting    = "The probe is left alone: type the readings."
	notUnderstood = "The probe's lines could not be understood, so type the readings. You can say what the lines hold, e.g. --layout \"depth m, temp C\"."
	mustState     = "A probe that is lowered without stopping must send its depth, and this one does not: hold it at one depth after another instead."
	lineLeftOut   = "The probe sends its own depth, so what was noted of marks, bulb and line angle is left out."

	helpDepths = "Lower the probe to about the depth asked for and hold it still: its reading is taken once it has settled. Enter takes it now. Type a depth and a temperature (12 68) for a reading by hand. undo, skip and stop work as always."
	helpHung   = "Lower the probe to the depth asked for, then Enter; or type the depth at which it hangs, then Enter. Its reading is taken once it has settled; Enter takes it now. Type a depth and a temperature (12 68) for a reading by hand. undo, skip and stop work as always."

	lowerEvenly = "Lower the probe slowly and evenly to the bottom, %s in two seconds or slower, then raise it as slowly. Enter when it is up again, or at the bottom."
	helpCast    = "Enter ends the cast."
)

// stopped is a sentence with its end: a question has one.
func stopped(text string) string {
	if strings.HasSuffix(text, "?") {
		return text
	}
	return text + "."
}

// words are those that differ between an angler who types lines and one who touches a
// screen.
type words struct {
	units, noUnits              string
	bottom, noDepth, helpBottom string
	typeHint, helpTyping        string
	noneAsked, noneNew, notOne  string
}

var typedWords = words{
	units:   "Which units are on your line and your thermometer? (--units or the settings can answer this next time.)",
	noUnits: `the units were not given: say --units "ft F" or --units "m C"`,

	bottom:     "How deep is the water here, in %s? (Enter if you do not know):",
	noDepth:    "%s is not a depth: type e.g. 24 or 24 %s, or Enter if you do not know",
	helpBottom: `The depth of water under the boat, such as 24 or 24 ft: from a sounder, or from the marks on the line once its weight touches bottom. Enter or skip if you do not know. stop ends the drop.`,

	typeHint:   "Type the temperature, then Enter; or a depth and its temperature (12 68). undo, skip, stop and help work at any time.",
	helpTyping: `Type the temperature at the depth asked for, then Enter. Type a depth and a temperature (12 68) to read at a depth of your own, or to correct one. A line such as "bottom: 24 ft", "wind: light S" or "caught rainbow 16 ft" is noted. undo removes the last reading, skip passes this depth over, stop ends the drop and shows the plan.`,

	noneAsked: "No depth is asked for: Enter ends the drop.",
	noneNew:   "There is no new reading to undo. To correct an older one, type its depth and the right temperature.",
	notOne:    "Type the one temperature that is right, e.g. 63, or a depth and a temperature.",
}

var touchedWords = words{
	units:   "Which units are on your line and your thermometer?",
	noUnits: "the units were not chosen, so no drop was begun",

	bottom:     "How deep is the water here, in %s?",
	noDepth:    "%s is not a depth: type e.g. 24 or 24 %s, or skip it if you do not know",
	helpBottom: "The depth of water under the boat: from a sounder, or from the marks on the line once its weight touches bottom.",

	helpTyping: `Type the temperature at the depth asked for, or a depth and a temperature. A line such as "wind: light S" or "caught 2 rainbow" is noted.`,

	noneAsked: "No depth is asked for: choose one above or below, or end the drop.",
	noneNew:   "There is no new reading to undo. To correct an older one, touch it in the list.",
	notOne:    "Type the one temperature that is right, or a depth and a temperature.",
}
