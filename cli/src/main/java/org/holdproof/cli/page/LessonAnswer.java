package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.holdproof.core.lesson.CountCourse;
import org.holdproof.core.lesson.Cut;
import org.holdproof.core.lesson.Lesson;
import org.holdproof.core.lesson.LessonBath;
import org.holdproof.core.lesson.LessonSetup;
import org.holdproof.core.lesson.Statement;
import org.holdproof.core.log.Trace;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.rules.LethalityRow;
import org.holdproof.core.rules.RuleLibrary;

/** The lesson for two baths: the core, what grows and dies in it, and what the documents say. */
final class LessonAnswer {
    private static final double HUNDREDTHS = 100;

    private final RuleLibrary library;

    LessonAnswer(RuleLibrary library) {
        this.library = library;
    }

    ObjectNode json(Asked asked) throws Fault {
        Lesson lesson = lesson(asked);
        double left = asked.figure("left");
        double right = asked.figure("right");
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("cut", lesson.setup().cut().title());
        json.put("hours", lesson.hours());
        LethalityRow lowest = lesson.rows().get(0);
        json.putObject("lowest")
                .put("celsius", lowest.at().celsius())
                .put("text", lowest.at().text());
        json.put("stops", lesson.bandText());
        json.put("says", Lesson.DIRECTION);
        ArrayNode baths = json.putArray("baths");
        for (double celsius : new double[] {left, right}) {
            lesson.baths().stream()
                    .filter(bath -> bath.celsius() == celsius)
                    .findFirst()
                    .ifPresent(bath -> baths.add(bath(bath)));
        }
        ArrayNode statements = json.putArray("statements");
        Stream.of(lesson.growthStops(), lesson.publishedRow(), lesson.toxin(), lesson.spores(), lesson.cannotClaim())
                .forEach(statement -> statements.add(statement(statement)));
        return json;
    }

    private Lesson lesson(Asked asked) throws Fault {
        String name = asked.text("cut").toUpperCase(Locale.ROOT);
        Cut cut = Stream.of(Cut.values())
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElseThrow(() -> Fault.badRequest("There is no lesson for this cut."));
        try {
            return Lesson.of(
                    new LessonSetup(
                            cut, asked.figure("millimetres"), baths(asked.figure("left"), asked.figure("right"))),
                    library);
        } catch (IllegalArgumentException refused) {
            throw Fault.unreadable(String.valueOf(refused.getMessage()));
        }
    }

    /** The two asked for, and as many others as a lesson needs. */
    private static List<Double> baths(double left, double right) {
        List<Double> baths = new ArrayList<>(List.of(left));
        if (right != left) {
            baths.add(right);
        }
        for (double other = LessonSetup.COLDEST_CELSIUS; baths.size() < LessonSetup.FEWEST_BATHS; other++) {
            if (!baths.contains(other)) {
                baths.add(other);
            }
        }
        return baths.stream().sorted().toList();
    }

    private static ObjectNode bath(LessonBath bath) {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("celsius", bath.celsius());
        Trace core = bath.core();
        ArrayNode hours = json.putArray("hours");
        ArrayNode celsius = json.putArray("core");
        for (int i = 0; i < core.size(); i++) {
            hours.add((core.millis(i) - core.firstMillis()) / 3_600_000.0);
            celsius.add(rounded(core.celsius(i)));
        }
        bath.nearMinutes().ifPresent(minutes -> json.put("nearMinutes", minutes));
        json.put("comeUpKept", bath.comeUpKept());
        bath.rowMet().ifPresent(met -> json.putObject("rowMet")
                .put("text", met.row().at().text())
                .put("minutes", met.minutes()));
        ArrayNode courses = json.putArray("courses");
        for (CountCourse course : bath.courses()) {
            ObjectNode one = courses.addObject();
            one.put("organism", course.organism());
            one.put("lagKnown", course.lag().isPresent());
            one.put("peakLow", course.peakLow()).put("peakHigh", course.peakHigh());
            one.put("endLow", course.endLow()).put("endHigh", course.endHigh());
            one.put("peakText", course.peakText()).put("endText", course.endText());
            ArrayNode at = one.putArray("hours");
            ArrayNode low = one.putArray("low");
            ArrayNode high = one.putArray("high");
            for (int i = 0; i < course.size(); i++) {
                at.add(rounded(course.hours(i)));
                low.add(rounded(course.low(i)));
                high.add(rounded(course.high(i)));
            }
        }
        return json;
    }

    static ObjectNode statement(Statement statement) {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("title", statement.title());
        json.put("text", statement.text());
        ArrayNode sources = json.putArray("sources");
        for (Citation citation : statement.citations()) {
            sources.add(citation.text());
        }
        return json;
    }

    private static double rounded(double value) {
        return Math.rint(value * HUNDREDTHS) / HUNDREDTHS;
    }
}
