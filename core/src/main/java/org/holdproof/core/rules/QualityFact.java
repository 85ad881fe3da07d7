package org.holdproof.core.rules;

/**
 * A published fact about eating quality, as its document puts it; no model rests on it.
 *
 * @param celsius as printed; may be empty
 * @param time as printed; may be empty
 * @param value as printed; may be empty
 * @param unit of the value; may be empty
 */
public record QualityFact(
        String id,
        String topic,
        String material,
        String quantity,
        String celsius,
        String time,
        String value,
        String unit,
        Citation citation) {

    /** The fact in one line, without its source. */
    public String text() {
        return material
                + ", "
                + quantity
                + (celsius.isEmpty() ? "" : ", " + celsius + " °C")
                + (time.isEmpty() ? "" : ", " + time)
                + (value.isEmpty() ? "" : ": " + value)
                + (unit.isEmpty() ? "" : unit.equals("C") ? " °C" : " " + unit);
    }
}
