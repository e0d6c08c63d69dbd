package line

import (
	"fmt"
	"math"

	"coldseam/profile/water"
)

// CRC8 is the check byte of the one-wire bus over b: polynomial x^8+x^5+x^4+1, lowest
// bit first, starting from 0. Over data with its own check byte it gives 0.
//
// Source: DS18B20 data sheet, CRC generation (from memory).
func CRC8(b []byte) byte {
	var crc byte
	for _, c := range b {
		crc ^= c
		for range 8 {
			low := crc & 1
			crc >>= 1
			if low != 0 {
				crc ^= 0x8C
			}
		}
	}
	return crc
}

// WordTempC reads the temperature register of a DS18B20 as four hexadecimal digits,
// high byte first ("0191"), and gives degrees Celsius: a signed number of sixteenths.
// 0550, the 85 C of a sensor that has not measured yet, is refused as a Sentinel.
//
// Source: DS18B20 data sheet, temperature/data relationship (from memory).
func WordTempC(hex []byte) (float64, error) {
	var b [2]byte
	if err := unhex(b[:], trim(hex)); err != nil {
		return 0, err
	}
	return wordTempC(b[1], b[0])
}

// ScratchpadTempC reads the nine bytes of a DS18B20's scratchpad in hexadecimal, with
// or without spaces between, checks the last as the CRC8 of the others, and gives
// degrees Celsius. Bits that the set resolution leaves undefined count as zero.
//
// Source: DS18B20 data sheet, memory map (from memory).
func ScratchpadTempC(hex []byte) (float64, error) {
	var b [9]byte
	if err := unhex(b[:], trim(hex)); err != nil {
		return 0, err
	}
	if want := CRC8(b[:8]); b[8] != want {
		return 0, refuse(BadChecksum, fmt.Sprintf("the check byte says %02X, the bytes add up to %02X", b[8], want))
	}
	if b == [9]byte{} {
		return 0, refuse(Sentinel, "nothing but zeros: a bus held low, not a sensor")
	}
	undefined := 3 - b[4]>>5&3 // 9 bits leave three bits undefined, 12 bits none
	return wordTempC(b[0]&^(1<<undefined-1), b[1])
}

func wordTempC(low, high byte) (float64, error) {
	c := float64(int16(uint16(high)<<8|uint16(low))) / 16
	return c, CheckTempC(c)
}

// unhex fills dst from exactly as many bytes in hexadecimal.
func unhex(dst, hex []byte) error {
	n := 0
	for i := 0; i < len(hex); i += 2 {
		for i < len(hex) && hex[i] == ' ' {
			i++
		}
		if i+1 >= len(hex) || n == len(dst) {
			return refuse(BadForm, fmt.Sprintf("not %d bytes in hexadecimal: %s", len(dst), Shown(hex)))
		}
		hi, ok1 := hexDigit(hex[i])
		lo, ok2 := hexDigit(hex[i+1])
		if !ok1 || !ok2 {
			return refuse(BadNumber, "not hexadecimal: "+Shown(hex))
		}
		dst[n] = hi<<4 | lo
		n++
	}
	if n != len(dst) {
		return refuse(BadForm, fmt.Sprintf("not %d bytes in hexadecimal: %s", len(dst), Shown(hex)))
	}
	return nil
}

// Thermistor holds the three coefficients of one part, from its data sheet. Those of
// another part give temperatures that look right and are not.
type Thermistor struct{ A, B, C float64 }

// TempC is the temperature in degrees Celsius at which the thermistor has a
// resistance of ohms, refused unless it comes to -5 to 50 C.
//
// Source: Steinhart & Hart 1968 (Deep-Sea Research 15:497),
// 1/T = A + B ln R + C (ln R)^3 (from memory).
func (t Thermistor) TempC(ohms float64) (float64, error) {
	if !(ohms > 0) || math.IsInf(ohms, 0) {
		return 0, refuse(OutOfRange, "the resistance is not above zero: a short or a broken wire")
	}
	l := math.Log(ohms)
	c := 1/(t.A+t.B*l+t.C*l*l*l) - water.ZeroCelsiusK
	if err := within(c, minTempC, maxTempC, "temperature"); err != nil {
		return 0, err
	}
	return c, nil
}
