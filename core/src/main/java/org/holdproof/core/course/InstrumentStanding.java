package org.holdproof.core.course;

import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Instrument.InstrumentCheck;
import org.holdproof.core.heat.BoilingTemperature;

/**
 * What the thermometer's last check says of its readings.
 *
 * @param errorCelsius what it read at the check less what it should have read; empty without a check
 */
public record InstrumentStanding(OptionalDouble errorCelsius) {

    public static InstrumentStanding of(Instrument instrument) {
        Optional<InstrumentCheck> last = instrument.lastCheck();
        return new InstrumentStanding(
                last.isPresent() ? OptionalDouble.of(errorCelsius(last.get())) : OptionalDouble.empty());
    }

    /** What is added to every reading to undo the known error, in °C. */
    public double correctionCelsius() {
        return errorCelsius.isPresent() ? -errorCelsius.getAsDouble() : 0;
    }

    /** What a thermometer read at a check less what it should have read, in °C. */
    public static double errorCelsius(InstrumentCheck check) {
        double expected =
                switch (check.method()) {
                    case ICE_POINT -> 0;
                    case BOILING_POINT ->
                        BoilingTemperature.atAltitude(check.altitudeMetres().orElseThrow());
                    case COMPARISON -> check.referenceCelsius().orElseThrow();
                };
        return check.readingCelsius() - expected;
    }
}
