package org.holdproof.core.assess;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.holdproof.core.batch.Instrument;
import org.holdproof.core.batch.Instrument.InstrumentCheck;
import org.holdproof.core.course.Evidence;
import org.holdproof.core.course.InstrumentStanding;
import org.holdproof.core.quantity.Bounded;
import org.holdproof.core.quantity.Comparison;
import org.holdproof.core.verdict.Caution;
import org.holdproof.core.verdict.Check;
import org.holdproof.core.verdict.Verdict;

/** Was the thermometer checked, in time, and is what it was off by small enough to be put right by adding? */
final class ThermometerCheck {
    /**
     * Where the authority's documents as held here name no figure, an error beyond this, in °C, is not corrected away:
     * a convention of this program, after the 1 °C that the US Food Code, Australia and Hong Kong ask.
     */
    static final double MOST_ERROR_CELSIUS = 1;

    /** A check older than this at the cook, in days, says nothing of it: a convention of this program. */
    static final int OLDEST_CHECK_DAYS = 366;

    private static final String CONVENTION = " (a convention of this program: the authority as held here names none)";
    private static final double FOUND_TRUE_CELSIUS = 0.05;

    private final Evidence evidence;
    private final Instrument instrument;

    ThermometerCheck(Evidence evidence, Instrument instrument) {
        this.evidence = evidence;
        this.instrument = instrument;
    }

    /** Every thermometer of the record; the first of the worst answers. */
    static Check worst(Evidence evidence) {
        return evidence.batch().instruments().stream()
                .map(instrument -> new ThermometerCheck(evidence, instrument).check())
                .reduce((one, other) -> one.verdict().and(other.verdict()) == one.verdict() ? one : other)
                .orElseThrow();
    }

    /** What is to be minded of every thermometer of the record. */
    static List<Caution> allCautions(Evidence evidence) {
        return evidence.batch().instruments().stream()
                .flatMap(instrument -> new ThermometerCheck(evidence, instrument).cautions().stream())
                .toList();
    }

    Check check() {
        OptionalDouble named = evidence.authority().toleranceCelsius();
        double allowed = named.orElse(MOST_ERROR_CELSIUS);
        Check.Builder check = Check.of("instrument", "Thermometer trusted")
                .required("a thermometer checked within " + OLDEST_CHECK_DAYS + " days before the cook and true within "
                        + evidence.wording().difference(allowed) + (named.isPresent() ? "" : CONVENTION))
                .limit(allowed)
                .comparison(Comparison.AT_MOST)
                .verdict(Verdict.NOT_PROVEN);
        Optional<InstrumentCheck> last = instrument.lastCheck();
        if (last.isEmpty()) {
            return check.why("The batch record holds no check of thermometer " + instrument.id() + ".")
                    .next("Check it in ice water or boiling water and add the result to the batch record.")
                    .build();
        }
        double error = InstrumentStanding.errorCelsius(last.get());
        check.measured(Bounded.exactly(Math.abs(error))).unit("°C");
        if (last.get().date().isAfter(lastDay())) {
            return check.why("The last check of thermometer " + instrument.id() + ", of "
                            + last.get().date() + ", is dated after the cook: it did not guard it.")
                    .next("Add the last check before the cook to the batch record.")
                    .build();
        }
        if (daysBefore(last.get()) > OLDEST_CHECK_DAYS) {
            return check.why(String.format(
                            Locale.ROOT,
                            "Thermometer %s was last checked %d days before the cook.",
                            instrument.id(),
                            daysBefore(last.get())))
                    .next("Check it in ice water or boiling water, and regularly from now on.")
                    .build();
        }
        boolean met = Check.judge(Bounded.exactly(Math.abs(error)), Comparison.AT_MOST, allowed) == Verdict.MET;
        return check.verdict(met ? Verdict.MET : Verdict.NOT_PROVEN)
                .why(found(error)
                        + (met
                                ? ""
                                : named.isPresent()
                                        ? " It is outside what the authority allows."
                                        : " That is more than can honestly be corrected."))
                .next(met ? "" : "Take the thermometer out of use until it is serviced and checked again.")
                .build();
    }

    private String found(double error) {
        return Math.abs(error) < FOUND_TRUE_CELSIUS
                ? "Its last check found no error."
                : String.format(
                        Locale.ROOT,
                        "Its last check found it %s too %s; every reading was corrected by that much.",
                        evidence.wording().difference(Math.abs(error)),
                        error > 0 ? "high" : "low");
    }

    List<Caution> cautions() {
        List<Caution> cautions = new ArrayList<>();
        overdue().ifPresent(cautions::add);
        if (instrument.toleranceCelsius() == 0) {
            cautions.add(new Caution(
                    "instrument.tolerance",
                    "The record gives thermometer " + instrument.id()
                            + " a tolerance of 0: no thermometer reads without error. Give the maker's accuracy."));
        }
        return cautions;
    }

    private Optional<Caution> overdue() {
        OptionalDouble every = instrument.checkEveryDays().isPresent()
                ? instrument.checkEveryDays()
                : evidence.authority().checkEveryDays();
        if (instrument.lastCheck().isEmpty() || every.isEmpty()) {
            return Optional.empty();
        }
        long days = daysBefore(instrument.lastCheck().get());
        return days <= every.getAsDouble()
                ? Optional.empty()
                : Optional.of(new Caution(
                        "instrument.overdue",
                        String.format(
                                Locale.ROOT,
                                "Thermometer %s was last checked %d days before the cook; it is due every %.0f days.",
                                instrument.id(),
                                days,
                                every.getAsDouble())));
    }

    private long daysBefore(InstrumentCheck check) {
        return ChronoUnit.DAYS.between(
                check.date(), day(Instant.ofEpochMilli(evidence.timeline().log().fromMillis())));
    }

    /** The last day the record's own stages name; later readings move nothing. */
    private LocalDate lastDay() {
        return evidence.batch().stages().stream()
                .map(stage -> stage.to().orElse(stage.from()))
                .max(Instant::compareTo)
                .map(this::day)
                .orElse(day(Instant.ofEpochMilli(evidence.timeline().log().fromMillis())));
    }

    private LocalDate day(Instant instant) {
        return instant.atZone(evidence.batch().kitchen().zone()).toLocalDate();
    }
}
