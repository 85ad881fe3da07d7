package org.holdproof.core.lesson;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.holdproof.core.heat.SurfaceCoefficient;
import org.holdproof.core.kinetics.SlowestDeath;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.TemperatureUnit;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.CoolingRule;
import org.holdproof.core.rules.GrowthFact;
import org.holdproof.core.rules.GrowthLag;
import org.holdproof.core.rules.GrowthModel;
import org.holdproof.core.rules.HoldingRule;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.LethalityTable;
import org.holdproof.core.rules.RuleLibrary;
import org.holdproof.core.rules.Source;
import org.holdproof.core.rules.Source.How;

/**
 * The same cut in a row of baths: why a very low one is unsafe. Everything a page of it shows, worked out. It shows
 * direction and order of size; it is not a safety limit.
 *
 * @param hours the time simulated
 * @param baths the coldest first
 * @param stops where the sources have C. perfringens stop growing, the lowest first
 * @param table the published table for the cut
 * @param rows its rows, the lowest first, for fat unknown
 * @param deathLines times for the table's reduction by published lines of death
 * @param growthStops what is said of the end of growth
 * @param publishedRow what is said of the lowest published row
 * @param cannotClaim what the simulation cannot claim
 */
public record Lesson(
        LessonSetup setup,
        double hours,
        List<LessonBath> baths,
        List<GrowthStop> stops,
        LethalityTable table,
        List<LethalityRow> rows,
        double targetLog10,
        List<DeathLine> deathLines,
        HandCalculation calculation,
        Statement growthStops,
        Statement publishedRow,
        Statement toxin,
        Statement spores,
        Statement cannotClaim,
        List<MeasuredFinding> findings,
        List<Exercise> exercises) {

    /** What every picture of the simulation says. */
    public static final String DIRECTION = "Simulation: it shows direction and order of size, not a safety limit.";

    private static final double USUAL_HOURS = 12;
    private static final int READINGS = 240;
    private static final double NEAR_CELSIUS = 1;
    private static final double LOG_AXIS_TO_CELSIUS = 65;

    public Lesson {
        baths = List.copyOf(baths);
        stops = List.copyOf(stops);
        rows = List.copyOf(rows);
        deathLines = List.copyOf(deathLines);
        findings = List.copyOf(findings);
        exercises = List.copyOf(exercises);
    }

    /**
     * Works the lesson out.
     *
     * @throws IllegalArgumentException if the library lacks a table, model or fact it is made of
     */
    public static Lesson of(LessonSetup setup, RuleLibrary rules) {
        LethalityTable table = table(rules, setup.cut().tableId());
        List<LethalityRow> rows = table.rowsFor(OptionalDouble.empty()).stream()
                .sorted(Comparator.comparingDouble(row -> row.at().celsius()))
                .toList();
        CutInBath cut = new CutInBath(setup.cut(), setup.thicknessMillimetres());
        double hours = hours(setup, cut);
        List<LessonBath> baths = setup.bathsCelsius().stream()
                .map(celsius -> bath(setup, rules, rows, cut, hours, celsius))
                .toList();
        double target =
                table.targetLog10().orElseThrow(() -> new IllegalArgumentException(table.id() + " names no reduction"));
        HandCalculation calculation = HandCalculation.of(table, rows);
        List<GrowthStop> stops = GrowthStop.of(rules, CountCourse.PERFRINGENS);
        return new Lesson(
                setup,
                hours,
                baths,
                stops,
                table,
                rows,
                target,
                List.of(
                        DeathLine.of(
                                "L. monocytogenes (cautious)",
                                SlowestDeath.vegetative(rules),
                                target,
                                LOG_AXIS_TO_CELSIUS),
                        DeathLine.of(
                                "C. perfringens cells",
                                SlowestDeath.perfringensCells(rules),
                                target,
                                LOG_AXIS_TO_CELSIUS)),
                calculation,
                growthStops(rules, stops),
                publishedRow(rules, setup, rows.get(0)),
                toxin(rules, baths, hours),
                spores(rules),
                cannotClaim(rules, baths.get(0)),
                MeasuredFinding.of(rules),
                new Exercises(rules, setup, rows, comeUp(rules), calculation).all());
    }

    private static LethalityTable table(RuleLibrary rules, String id) {
        return rules.rules(LethalityTable.class)
                .find(id)
                .orElseThrow(() -> new IllegalArgumentException("no table " + id));
    }

    private static HoldingRule comeUp(RuleLibrary rules) {
        return rules.rules(HoldingRule.class)
                .find("US-FSIS-CUT")
                .orElseThrow(() -> new IllegalArgumentException("no rule US-FSIS-CUT"));
    }

    private static GrowthFact fact(RuleLibrary rules, String id) {
        return rules.rules(GrowthFact.class)
                .find(id)
                .orElseThrow(() -> new IllegalArgumentException("no growth fact " + id));
    }

    /** Twelve hours, or as many times that as a thick cut takes twice over. */
    private static double hours(LessonSetup setup, CutInBath cut) {
        double coldest = setup.bathsCelsius().get(0);
        for (double hours = USUAL_HOURS; ; hours *= 2) {
            Trace core = cut.core(List.of(new CutInBath.Span(hours * 60, coldest)), hours * 60 / READINGS);
            OptionalDouble near = nearMinutes(core, coldest);
            if (near.isPresent() && near.getAsDouble() <= hours * 60 / 2) {
                return hours;
            }
        }
    }

    private static LessonBath bath(
            LessonSetup setup,
            RuleLibrary rules,
            List<LethalityRow> rows,
            CutInBath cut,
            double hours,
            double celsius) {
        Trace core = cut.core(List.of(new CutInBath.Span(hours * 60, celsius)), hours * 60 / READINGS);
        return new LessonBath(
                celsius,
                core,
                nearMinutes(core, celsius),
                CountCourse.along(core, rules, setup.cut().species()),
                LessonBath.isComeUpKept(core, comeUp(rules)),
                LessonBath.firstMet(core, rows));
    }

    private static OptionalDouble nearMinutes(Trace core, double bath) {
        for (int i = 0; i < core.size(); i++) {
            if (core.celsius(i) >= bath - NEAR_CELSIUS) {
                return OptionalDouble.of((core.millis(i) - core.firstMillis()) / 60_000.0);
            }
        }
        return OptionalDouble.empty();
    }

    /** The temperatures C. perfringens stops growing at, by source: {@code 50 to 53.4 °C}. */
    public String bandText() {
        return InWords.figure(stops.get(0).celsius()) + " to "
                + InWords.celsius(stops.get(stops.size() - 1).celsius());
    }

    private static Statement growthStops(RuleLibrary rules, List<GrowthStop> stops) {
        double low = stops.get(0).celsius();
        double high = stops.get(stops.size() - 1).celsius();
        GrowthFact pork = fact(rules, "F16");
        List<Citation> citations =
                new ArrayList<>(stops.stream().map(GrowthStop::citation).toList());
        citations.add(pork.citation());
        return new Statement(
                "It grows to " + InWords.figure(low) + "–" + InWords.celsius(high),
                "Sources put the end of C. perfringens growth at "
                        + InWords.list(stops.stream()
                                .map(stop -> InWords.figure(stop.celsius()))
                                .toList())
                        + " °C (" + fahrenheit(low) + " to " + fahrenheit(high)
                        + " °F). A lower bath is a warm, airless meal for it. In pork warmed at 4 °C an hour it grew"
                        + " even between 44 and 56 °C.",
                citations);
    }

    private static long fahrenheit(double celsius) {
        return Math.round(TemperatureUnit.FAHRENHEIT.fromCelsius(celsius));
    }

    private static Statement publishedRow(RuleLibrary rules, LessonSetup setup, LethalityRow lowest) {
        double anywhere = rules.rules(LethalityTable.class).all().stream()
                .flatMap(found -> found.rows().stream())
                .mapToDouble(row -> row.at().celsius())
                .min()
                .orElseThrow();
        HoldingRule comeUp = comeUp(rules);
        GrowthFact trial = fact(rules, "F09");
        return new Statement(
                "No row below " + InWords.boundary(lowest.at()),
                "The lowest for " + setup.cut().species() + " here: "
                        + InWords.boundary(lowest.at()) + " for " + lowest.printedTime() + "; no table held here, for"
                        + " any food, begins below " + InWords.celsius(anywhere)
                        + ". A row counts only after a come-up ("
                        + InWords.figure(comeUp.from().orElseThrow().value()) + " to "
                        + comeUp.limit().orElseThrow().text() + ") of "
                        + InWords.hours(comeUp.maxMinutes().orElseThrow() / 60)
                        + " at most. At 54.4 °C a later trial did not reproduce the US 6.5-log times.",
                List.of(lowest.citation(), comeUp.citation(), trial.citation()));
    }

    private static Statement toxin(RuleLibrary rules, List<LessonBath> baths, double hours) {
        GrowthFact illness = fact(rules, "F25");
        GrowthFact limits = fact(rules, "F23");
        String simulated = baths.stream()
                .filter(bath -> staphylococci(bath).concernHours().isPresent())
                .findFirst()
                .map(bath -> "Simulated, a bath at " + InWords.celsius(bath.celsius()) + " may pass that in about "
                        + Math.round(staphylococci(bath).concernHours().getAsDouble()) + " h.")
                .orElse("None of these baths passes that in " + InWords.hours(hours) + ", simulated.");
        return new Statement(
                "Toxin stays",
                "S. aureus makes toxin from 10 to 45 °C; about 100 000 per gram (5 logs) is where illness begins. "
                        + simulated + " Heat kills the cells afterwards. It does not undo the toxin.",
                List.of(illness.citation(), limits.citation()));
    }

    private static CountCourse staphylococci(LessonBath bath) {
        return bath.courses().stream()
                .filter(course -> course.concernChange().isPresent())
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no organism with a count of concern"));
    }

    private static Statement spores(RuleLibrary rules) {
        GrowthFact heat = fact(rules, "F18");
        CoolingRule chill = rules.rules(CoolingRule.class)
                .find("US-FSIS-B1")
                .orElseThrow(() -> new IllegalArgumentException("no rule US-FSIS-B1"));
        return new Statement(
                "Spores stay",
                "No bath here touches C. perfringens spores: one log of them takes 30 to 124 min at 100 °C. They wake"
                        + " in food that cools slowly. Hence the chill: " + chill(chill) + ".",
                List.of(heat.citation(), chill.citation()));
    }

    private static String chill(CoolingRule rule) {
        List<String> stages = new ArrayList<>();
        for (CoolingRule.Stage stage : rule.stages()) {
            stages.add(InWords.figure(stage.from().orElseThrow().value()) + " to "
                    + stage.to().orElseThrow().text() + " in "
                    + InWords.hours(stage.maxMinutes().orElseThrow() / 60));
        }
        return String.join(", then ", stages);
    }

    private static Statement cannotClaim(RuleLibrary rules, LessonBath bath) {
        List<Citation> citations = new ArrayList<>();
        List<String> starts = new ArrayList<>();
        for (CountCourse course : bath.courses()) {
            citations.addAll(course.citations());
            course.lag().map(GrowthLag::citation).ifPresent(citations::add);
            starts.add(course.organism() + " 10^" + Math.round(course.startLog10()));
        }
        SlowestDeath.vegetative(rules).lines().forEach(line -> citations.add(line.citation()));
        SlowestDeath.perfringensCells(rules).lines().forEach(line -> citations.add(line.citation()));
        double ceiling = bath.courses().stream()
                .flatMap(course -> course.models().stream())
                .mapToDouble(GrowthModel::ceilingLog10)
                .max()
                .orElseThrow();
        SurfaceCoefficient water = SurfaceCoefficient.named("bath-stirred-published");
        for (Source source : water.sources()) {
            String document = source.title() + ", " + source.issuer() + " (" + source.year() + ")";
            citations.add(new Citation(source, document, "", water.how(), water.note()));
        }
        boolean recalled = bath.courses().stream()
                .flatMap(course -> course.lag().stream())
                .anyMatch(lag -> lag.citation().how() == How.MEMORY);
        return new Statement(
                "What the simulation cannot claim",
                "It cannot clear or condemn a lot. C. perfringens: a worst-case screen for uncured meat, from no lag"
                        + " (cells that grow at once) to lag (heated spores)"
                        + (recalled ? ", the lag from memory, unconfirmed" : "")
                        + ". Salmonella and S. aureus: one strain each, no lag, only the high end. No acid, salt or"
                        + " rival bacteria. Assumed: per gram at the start " + String.join(", ", starts)
                        + ", never above 10^" + Math.round(ceiling)
                        + ". No change is credited between the end of growth and 54.4 °C (C. perfringens 55 °C);"
                        + " straight-line death below that is not supported. Heat:"
                        + " conduction from " + InWords.celsius(CutInBath.START_CELSIUS) + ", water side "
                        + InWords.figure(water.typical()) + " W/(m² K)"
                        + (water.how().isUnconfirmed() ? " (" + water.how().caveat() + ")." : "."),
                citations);
    }
}
