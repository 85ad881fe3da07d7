package org.holdproof.core.batch;

import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Instrument.InstrumentCheck;
import org.holdproof.core.batch.Instrument.Method;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.quantity.QuantityKind;

/** Reads what a batch record says of a logging thermometer. */
final class InstrumentSection {
    private static final PlausibleRange TOLERANCE =
            new PlausibleRange(QuantityKind.TEMPERATURE_DIFFERENCE, 0, 5, "0 °C to 5 °C");
    private static final PlausibleRange ICE_READING =
            new PlausibleRange(QuantityKind.TEMPERATURE, -20, 20, "-20 °C to 20 °C (ice melts at 0 °C, 32 °F)");
    private static final PlausibleRange BOILING_READING = new PlausibleRange(
            QuantityKind.TEMPERATURE, 60, 120, "60 °C to 120 °C (water boils at 100 °C, 212 °F, at sea level)");
    private static final PlausibleRange ALTITUDE =
            new PlausibleRange(QuantityKind.ALTITUDE, -430, 6000, "-430 m to 6000 m");
    private static final PlausibleRange CHECK_EVERY = new PlausibleRange(QuantityKind.DAYS, 1, 3660, "1 d to 3660 d");
    private static final PlausibleRange TEMPERATURE =
            new PlausibleRange(QuantityKind.TEMPERATURE, -40, 400, "-40 °C to 400 °C");

    private InstrumentSection() {}

    static Instrument read(Section instrument) throws UnreadableInputException {
        String id = instrument.text("id");
        double tolerance = instrument.quantity("tolerance", TOLERANCE);
        Optional<Section> lastCheck =
                instrument.optionalSection("lastCheck", "date", "method", "reading", "reference", "altitude");
        return new Instrument(
                id,
                tolerance,
                lastCheck.isEmpty() ? Optional.empty() : Optional.of(check(lastCheck.get())),
                instrument.optionalQuantity("checkEvery", CHECK_EVERY));
    }

    private static InstrumentCheck check(Section check) throws UnreadableInputException {
        Method method = check.choice("method", Method.values(), Method::title);
        String expectedDate = "a date such as '2031-04-01'";
        return new InstrumentCheck(
                TimeText.date(Section.textOf(check.required("date", expectedDate), expectedDate)),
                method,
                check.quantity(
                        "reading",
                        switch (method) {
                            case ICE_POINT -> ICE_READING;
                            case BOILING_POINT -> BOILING_READING;
                            case COMPARISON -> TEMPERATURE;
                        }),
                onlyWith(Method.COMPARISON, method, check, "reference", TEMPERATURE),
                onlyWith(Method.BOILING_POINT, method, check, "altitude", ALTITUDE));
    }

    /** A figure one method needs and the others have no use for. */
    private static OptionalDouble onlyWith(
            Method needing, Method method, Section check, String name, PlausibleRange range)
            throws UnreadableInputException {
        if (method == needing) {
            return OptionalDouble.of(check.quantity(name, range));
        }
        if (check.has(name)) {
            throw check.required(name, "")
                    .place()
                    .fault(
                            "'" + name + "' with the method '" + method.title() + "'",
                            "'" + name + "' only with '" + needing.title() + "'",
                            "Correct the method, or leave '" + name + "' out.");
        }
        return OptionalDouble.empty();
    }
}
