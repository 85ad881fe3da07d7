package org.holdproof.core.lesson;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.holdproof.core.lesson.LessonBath.RowMet;
import org.holdproof.core.log.Trace;
import org.holdproof.core.measure.LongestSpell;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.RuleLibrary;

/** The three exercises: a bath too low, a row to find, a bath put right too late. */
final class Exercises {
    private static final double LOW_BATH = 50;
    private static final double GOOD_BATH = 60;
    private static final double WRONG_BATH = 42;
    private static final double PUT_RIGHT_BATH = 62;
    /** The row to find lies this far below its bath, so that the core is there in good time. */
    private static final double ROW_BELOW_BATH = 1.9;

    private static final double HOURS = 12;
    /** A thicker cut comes up too slowly for a row met to be the whole answer. */
    private static final double MOST_MILLIMETRES = 70;

    private static final double COME_UP_FROM = 10;

    private final RuleLibrary rules;
    private final LessonSetup setup;
    private final List<LethalityRow> rows;
    private final HoldingRule comeUp;
    private final HandCalculation calculation;
    private final double millimetres;

    Exercises(
            RuleLibrary rules,
            LessonSetup setup,
            List<LethalityRow> rows,
            HoldingRule comeUp,
            HandCalculation calculation) {
        this.rules = rules;
        this.setup = setup;
        this.rows = rows;
        this.comeUp = comeUp;
        this.calculation = calculation;
        millimetres = Math.min(setup.thicknessMillimetres(), MOST_MILLIMETRES);
    }

    List<Exercise> all() {
        return List.of(tooLow(), rowToFind(), putRight());
    }

    private String cut() {
        return "A " + setup.cut().title() + " " + InWords.figure(millimetres) + " mm thick";
    }

    private Trace readings(double everyMinutes, CutInBath.Span... baths) {
        Trace exact = new CutInBath(setup.cut(), millimetres).core(List.of(baths), everyMinutes);
        long[] millis = new long[exact.size()];
        double[] tenths = new double[exact.size()];
        for (int i = 0; i < tenths.length; i++) {
            millis[i] = exact.millis(i);
            tenths[i] = Math.rint(exact.celsius(i) * 10) / 10;
        }
        return new Trace(exact.channel(), millis, tenths);
    }

    private CountCourse course(Trace log, String organism) {
        return CountCourse.along(log, rules, setup.cut().species()).stream()
                .filter(course -> course.organism().equals(organism))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no growth model for " + organism));
    }

    private Exercise tooLow() {
        Trace log = readings(60, new CutInBath.Span(HOURS * 60, LOW_BATH));
        LethalityRow lowest = rows.get(0);
        Optional<RowMet> met = LessonBath.firstMet(log, rows);
        CountCourse perfringens = course(log, CountCourse.PERFRINGENS);
        double end = log.celsius(log.size() - 1);
        return new Exercise(
                "It just takes longer",
                cut() + " goes into a bath at " + InWords.celsius(LOW_BATH) + " for " + InWords.hours(HOURS)
                        + ". The cook says: low is gentle, it just takes longer.",
                log,
                List.of(
                        "Which row of the published table does this log meet?",
                        "By the readings, for how many hours was the core at " + InWords.celsius(COME_UP_FROM)
                                + " or more and still below " + InWords.boundary(lowest.at()) + "?",
                        "What did C. perfringens do in that time, by the lesson's simulation? Would six hours more help?"),
                List.of(
                        met.map(found -> "It meets "
                                        + InWords.boundary(found.row().at()) + " for "
                                        + found.row().printedTime() + ".")
                                .orElse("None. The lowest row asks for " + InWords.boundary(lowest.at()) + " for "
                                        + lowest.printedTime() + "; the core ends at " + InWords.celsius(end) + "."),
                        "At least " + InWords.hours(hoursFrom(log, COME_UP_FROM)) + ": from the first reading at "
                                + InWords.celsius(COME_UP_FROM)
                                + " or more to the last one.",
                        "It grew: " + perfringens.peakText() + " logs, with lag to no lag (at +8 it has reached the"
                                + " ceiling assumed). No: no row begins this low, however long. Discard."));
    }

    /** From the first reading at or above a temperature to the last reading. */
    private static double hoursFrom(Trace log, double celsius) {
        int first = 0;
        while (log.celsius(first) < celsius) {
            first++;
        }
        return (log.lastMillis() - log.millis(first)) / 3_600_000.0;
    }

    private Exercise rowToFind() {
        LethalityRow row = rows.stream()
                .filter(found -> found.at().celsius() <= GOOD_BATH - ROW_BELOW_BATH)
                .max(Comparator.comparingDouble(found -> found.at().celsius()))
                .orElse(rows.get(0));
        double every = 30;
        Trace whole = readings(every, new CutInBath.Span(HOURS * 60, GOOD_BATH));
        double celsius = row.at().celsius();
        int first = 0;
        while (first < whole.size() - 1 && whole.celsius(first) < celsius) {
            first++;
        }
        int last = first;
        while (last < whole.size() - 1 && (whole.millis(last) - whole.millis(first)) / 1000.0 < row.seconds()) {
            last++;
        }
        Trace log = whole.between(whole.firstMillis(), whole.millis(Math.min(last + 1, whole.size() - 1)));
        boolean met = LongestSpell.atOrAbove(log, celsius, 0, every)
                .worst()
                .filter(spell -> spell.seconds() >= row.seconds())
                .isPresent();
        String hold = InWords.minutes(calculation.minutes(GOOD_BATH));
        return new Exercise(
                "Find the row",
                cut() + " goes into a bath at " + InWords.celsius(GOOD_BATH) + ". The table asks for "
                        + InWords.boundary(row.at()) + " for " + row.printedTime() + ".",
                log,
                List.of(
                        "Going by readings alone, from which reading to which has the core surely done that time?",
                        "With the D and z of the worked line: how many minutes at " + InWords.celsius(GOOD_BATH)
                                + " for " + InWords.figure(calculation.targetLog10()) + " logs?",
                        "The row is met. What is still alive in the bag, and what follows?"),
                List.of(
                        met
                                ? "From the reading at " + clock(whole, first) + " to the one at " + clock(whole, last)
                                        + ": " + InWords.minutes(minutesBetween(whole, first, last))
                                        + ", every reading at or above " + InWords.boundary(row.at())
                                        + ". What happened before the first of them is not counted."
                                : "The log ends before the row is met.",
                        hold + ". Only the time once the core is there counts; the printed row governs.",
                        "Spores. By its row it may be served or kept hot; what is kept is chilled fast and stored"
                                + " cold. Come-up, probe and record are checked as well."));
    }

    private static double minutesBetween(Trace trace, int from, int to) {
        return (trace.millis(to) - trace.millis(from)) / 60_000.0;
    }

    /** A reading's time from the start: {@code 4:30}. */
    static String clock(Trace trace, int i) {
        long minutes = Math.round((trace.millis(i) - trace.firstMillis()) / 60_000.0);
        long rest = minutes % 60;
        return minutes / 60 + ":" + (rest < 10 ? "0" : "") + rest;
    }

    /** A row met by the readings, and whether it counts: only after a come-up kept. */
    private String rowAfter(Trace log, RowMet met) {
        String row = InWords.boundary(met.row().at()) + " for " + met.row().printedTime() + " after "
                + InWords.hours(met.minutes() / 60);
        return LessonBath.isComeUpKept(log, comeUp)
                ? "Yes: " + row + "."
                : "No. The readings come to " + row + ", but a row counts only after a come-up of at most "
                        + InWords.hours(comeUp.maxMinutes().orElseThrow() / 60) + " from "
                        + InWords.figure(comeUp.from().orElseThrow().value()) + " to "
                        + comeUp.limit().orElseThrow().text() + ", and this one took longer.";
    }

    private Exercise putRight() {
        Trace log = readings(
                60, new CutInBath.Span(HOURS * 60, WRONG_BATH), new CutInBath.Span(HOURS / 2 * 60, PUT_RIGHT_BATH));
        CountCourse staphylococci = course(log, "S. aureus");
        Optional<RowMet> met = LessonBath.firstMet(log, rows);
        return new Exercise(
                "Put right in time?",
                cut() + " sits " + InWords.hours(HOURS) + " in a bath set to " + InWords.celsius(WRONG_BATH)
                        + " by mistake. Then the bath is put to " + InWords.celsius(PUT_RIGHT_BATH)
                        + ".",
                log,
                List.of(
                        "Is a row met, and what becomes of the cells of S. aureus?",
                        "When may S. aureus have passed 5 logs per gram, and why does that matter?",
                        "Serve or discard?"),
                List.of(
                        met.map(found -> rowAfter(log, found) + " Against the raw meat its cells end at "
                                        + staphylococci.endText() + " (logs): nearly all dead.")
                                .orElse("No row is met."),
                        staphylococci.concernHours().isPresent()
                                ? "After about "
                                        + Math.round(
                                                staphylococci.concernHours().getAsDouble())
                                        + " h, by the simulation. From there on it may have left toxin, and heat does"
                                        + " not undo toxin."
                                : "It did not, by the simulation.",
                        "Discard. What the readings reach afterwards speaks of cells, not of toxin or spores."));
    }
}
