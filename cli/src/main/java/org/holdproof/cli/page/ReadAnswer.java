package org.holdproof.cli.page;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.holdproof.core.input.UnreadableInputException;
import org.holdproof.core.log.DateOrder;
import org.holdproof.core.log.GapLimit;
import org.holdproof.core.log.LogFault;
import org.holdproof.core.log.LogSettings;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.log.Trace;
import org.holdproof.core.quantity.TemperatureUnit;

/** A log in plain words: what it holds, or the one question it leaves open, with every way to answer it. */
final class ReadAnswer {
    /** An instant to count from while a log's own start is not known yet. */
    private static final Instant SOME_START = Instant.EPOCH;

    private final Logs logs;

    ReadAnswer(Logs logs) {
        this.logs = logs;
    }

    /** Something a file leaves open, and what a person may say to it. */
    private enum Question {
        UNIT("log.unit"),
        DATES("log.dates"),
        START("log.start");

        private final String member;

        Question(String member) {
            this.member = member;
        }

        boolean isPut(UnreadableInputException unreadable) {
            return unreadable.remedy().contains("\"" + member + "\"");
        }
    }

    ObjectNode json(Asked asked) throws Fault, IOException {
        String file = asked.text("file");
        String name = asked.text("name");
        LogSettings settings = settings(asked);
        ObjectNode answer = Asked.MAPPER.createObjectNode();
        try {
            answer.set("log", describe(logs.read(file, name, settings)));
            return answer;
        } catch (UnreadableInputException unreadable) {
            for (Question question : Question.values()) {
                if (question.isPut(unreadable)) {
                    answer.set("question", question(question, file, name, settings, unreadable));
                    return answer;
                }
            }
            Fault fault = Unreadable.fault("log", unreadable);
            OptionalLong line = unreadable.place().line();
            throw line.isPresent() ? fault.with("around", FileLines.around(logs.file(file), line.getAsLong())) : fault;
        }
    }

    /** Every reading between two instants. */
    ObjectNode between(Asked asked) throws Fault, IOException {
        try {
            ProbeLog log = logs.read(asked.text("file"), asked.text("name"), settings(asked));
            return Series.between(log, (long) asked.figure("from"), (long) asked.figure("to"));
        } catch (UnreadableInputException unreadable) {
            throw Unreadable.fault("log", unreadable);
        }
    }

    private ObjectNode question(
            Question question, String file, String name, LogSettings settings, UnreadableInputException unreadable)
            throws Fault, IOException {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("asks", question.name().toLowerCase(java.util.Locale.ROOT));
        long line = unreadable.place().line().orElse(1);
        json.put("line", line);
        unreadable.place().column().ifPresent(column -> json.put("column", column));
        json.put("found", unreadable.found());
        json.put("expected", unreadable.expected());
        json.put("remedy", unreadable.remedy());
        json.set("around", FileLines.around(logs.file(file), line));
        ArrayNode choices = json.putArray("choices");
        switch (question) {
            case UNIT -> {
                for (TemperatureUnit unit : TemperatureUnit.values()) {
                    LogSettings with =
                            new LogSettings(Optional.of(unit), settings.dateOrder(), settings.zone(), settings.start());
                    choice(choices, unit == TemperatureUnit.CELSIUS ? "C" : "F", file, name, with);
                }
            }
            case DATES -> {
                for (DateOrder order : DateOrder.values()) {
                    LogSettings with =
                            new LogSettings(settings.unit(), Optional.of(order), settings.zone(), settings.start());
                    choice(choices, letters(order), file, name, with);
                }
            }
            case START -> {
                LogSettings with = new LogSettings(
                        settings.unit(), settings.dateOrder(), settings.zone(), Optional.of(SOME_START));
                choice(choices, "", file, name, with);
            }
        }
        return json;
    }

    /** A way to answer, with what the log would then be; one that the file itself rules out is left out. */
    private void choice(ArrayNode choices, String value, String file, String name, LogSettings settings)
            throws Fault, IOException {
        List<LogSettings> tries = new ArrayList<>(List.of(settings));
        if (settings.unit().isEmpty()) {
            tries.add(new LogSettings(
                    Optional.of(TemperatureUnit.CELSIUS), settings.dateOrder(), settings.zone(), settings.start()));
        }
        if (settings.start().isEmpty()) {
            tries.add(new LogSettings(settings.unit(), settings.dateOrder(), settings.zone(), Optional.of(SOME_START)));
        }
        ObjectNode choice = Asked.MAPPER.createObjectNode().put("value", value);
        for (LogSettings one : tries) {
            try {
                choice.set("log", describe(logs.read(file, name, one)));
                choices.add(choice);
                return;
            } catch (UnreadableInputException stillOpen) {
                // another question may be open besides; the next try settles it for the picture only
            }
        }
    }

    static ObjectNode describe(ProbeLog log) {
        ObjectNode json = Asked.MAPPER.createObjectNode();
        json.put("rows", log.rows());
        json.put("from", log.millis(0));
        json.put("to", log.millis(log.rows() - 1));
        ArrayNode channels = json.putArray("channels");
        ArrayNode gaps = json.putArray("gaps");
        double rhythmMinutes = 0;
        for (int i = 0; i < log.channels().size(); i++) {
            var channel = log.channels().get(i);
            Trace trace = log.trace(i);
            double rhythm = GapLimit.medianMinutes(trace);
            rhythmMinutes = rhythmMinutes == 0 ? rhythm : Math.min(rhythmMinutes, rhythm);
            for (int reading = 0; reading + 1 < trace.size(); reading++) {
                if (GapLimit.isGap(trace, reading)) {
                    gaps.addObject()
                            .put("channel", i)
                            .put("from", trace.millis(reading))
                            .put("to", trace.millis(reading + 1));
                }
            }
            channels.addObject()
                    .put("name", channel.name())
                    .put("unit", channel.unit() == TemperatureUnit.CELSIUS ? "C" : "F");
        }
        json.put("everySeconds", rhythmMinutes * 60);
        ArrayNode faults = json.putArray("faults");
        for (LogFault fault : log.faults()) {
            faults.addObject()
                    .put("kind", fault.kind().title())
                    .put("channel", fault.channel())
                    .put("line", fault.firstLine())
                    .put("lastLine", fault.lastLine())
                    .put("detail", fault.detail());
        }
        json.set("series", Series.of(log));
        return json;
    }

    static String letters(DateOrder order) {
        return switch (order) {
            case DAY_MONTH_YEAR -> "dmy";
            case MONTH_DAY_YEAR -> "mdy";
            case YEAR_MONTH_DAY -> "ymd";
        };
    }

    static LogSettings settings(Asked asked) throws Fault {
        Asked said = asked.part("settings");
        Optional<TemperatureUnit> unit = Optional.empty();
        if (said.has("unit")) {
            unit = Optional.of(
                    switch (said.text("unit")) {
                        case "C" -> TemperatureUnit.CELSIUS;
                        case "F" -> TemperatureUnit.FAHRENHEIT;
                        default -> throw Fault.badRequest("'unit' is neither C nor F.");
                    });
        }
        Optional<DateOrder> dates = Optional.empty();
        if (said.has("dates")) {
            String letters = said.text("dates");
            for (DateOrder order : DateOrder.values()) {
                dates = letters(order).equals(letters) ? Optional.of(order) : dates;
            }
            if (dates.isEmpty()) {
                throw Fault.badRequest("'dates' is none of dmy, mdy and ymd.");
            }
        }
        try {
            return new LogSettings(
                    unit,
                    dates,
                    said.has("zone") ? Optional.of(ZoneId.of(said.text("zone"))) : Optional.empty(),
                    said.has("start")
                            ? Optional.of(Instant.ofEpochMilli((long) said.figure("start")))
                            : Optional.empty());
        } catch (DateTimeException unknown) {
            throw Fault.badRequest("There is no time zone '" + said.text("zone") + "'.");
        }
    }
}
