package org.holdproof.cli.terminal;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.holdproof.core.log.ProbeLog;
import org.holdproof.core.rules.Citation;
import org.holdproof.core.standing.Remedy;
import org.holdproof.core.standing.RunningClock;
import org.holdproof.core.standing.Standing;
import org.holdproof.core.standing.StandingQuestion;
import org.holdproof.core.standing.StandingQuestion.State;

/**
 * Where a cook stands, on one screen of 80 columns: the curve, what is proven, what is still needed, by when, what is
 * lost, and what the documents allow now.
 *
 * @param log the log as read
 */
public record StandingAnswer(Standing standing, ProbeLog log, List<Remedy> remedies) {
    private static final int CURVE_ROWS = 4;
    private static final int LABEL_COLUMNS = 9;

    /** Ranks: the lower, the longer it stays on the screen. */
    private static final int LOST = 0;

    private static final int OPEN = 1;
    private static final int KEPT = 2;
    private static final int UNPROVEN = 3;
    private static final int ALLOWED = 4;
    private static final int KEPT_BY_TITLE = 5;
    private static final int PROVEN = 6;

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("d MMM uuuu HH:mm", Locale.ENGLISH);

    public StandingAnswer {
        remedies = List.copyOf(remedies);
    }

    /** A labelled paragraph; where the screen is too small the one of the highest rank gives way first. */
    private static final class Paragraph {
        private final int rank;
        private final List<String> lines;

        Paragraph(int rank, String label, String text) {
            this.rank = rank;
            lines = new ArrayList<>();
            String indent = " ".repeat(LABEL_COLUMNS);
            for (String line : Wrapped.at(text, Terminal.WIDTH - LABEL_COLUMNS)) {
                lines.add((lines.isEmpty() ? label + indent.substring(label.length()) : indent) + line);
            }
        }

        boolean isAllowed() {
            return rank == ALLOWED;
        }

        /** How readily it gives up a line, where there are several paragraphs of what is allowed or not. */
        int givesWay(boolean spare) {
            if (lines.size() > 1) {
                return rank >= UNPROVEN ? 3 : 1;
            }
            return spare && isAllowed() ? 2 : 0;
        }

        /** Gives up its last line; what is left ends with an ellipsis. */
        void shorten() {
            lines.remove(lines.size() - 1);
            if (!lines.isEmpty()) {
                String end = lines.get(lines.size() - 1);
                lines.set(lines.size() - 1, Answer.cut(end + " …", Terminal.WIDTH));
            }
        }
    }

    /** The answer's lines, at most {@value Terminal#HEIGHT}. */
    public List<String> lines(boolean unicode, boolean colour) {
        Answer picture = new Answer(standing.assessment(), log, List.of());
        List<String> lines = new ArrayList<>();
        lines.add(Answer.cut(picture.headline(), Terminal.WIDTH));
        lines.add(VerdictMark.of(standing.verdict(), unicode, colour) + meaning());
        lines.add(Answer.cut(when(), Terminal.WIDTH));
        lines.add(Answer.cut(picture.legend(), Terminal.WIDTH));
        lines.addAll(picture.plot().lines(CURVE_ROWS, unicode));
        List<Paragraph> body = body();
        fit(body, Terminal.HEIGHT - lines.size() - Answer.SAFETY.size());
        body.forEach(paragraph -> lines.addAll(paragraph.lines));
        lines.addAll(Answer.SAFETY);
        return lines;
    }

    /** First the words of lesser rank are cut to a line each, then all but one of the documents' go, then the rest. */
    private static void fit(List<Paragraph> body, int room) {
        while (body.stream().mapToInt(paragraph -> paragraph.lines.size()).sum() > room) {
            boolean spare = body.stream().filter(Paragraph::isAllowed).count() > 1;
            body.stream()
                    .max(Comparator.<Paragraph>comparingInt(paragraph -> paragraph.givesWay(spare))
                            .thenComparingInt(paragraph -> paragraph.rank)
                            .thenComparingInt(body::indexOf))
                    .orElseThrow()
                    .shorten();
            body.removeIf(paragraph -> paragraph.lines.isEmpty());
        }
    }

    private String meaning() {
        return switch (standing.verdict()) {
            case MET -> standing.isOver() ? ": the record proves every limit" : " so far: nothing is open now";
            case NOT_PROVEN -> standing.isOver() ? ": the record does not settle every limit" : " yet: see below";
            case NOT_MET -> ": a limit has run out or was not kept";
        };
    }

    private String when() {
        ZoneId zone = standing.assessment().batch().kitchen().zone();
        String stage = standing.isOver()
                ? "the last stage is over"
                : standing.underWay()
                        .map(under -> under.kind().title() + " under way since "
                                + CLOCK.format(under.from().atZone(zone)))
                        .orElse("between stages");
        return "Last reading "
                + CLOCK.format(Instant.ofEpochMilli(standing.presentMillis()).atZone(zone)) + "; " + stage;
    }

    private List<Paragraph> body() {
        List<Paragraph> body = new ArrayList<>();
        titles(body, PROVEN, "Proven", standing.questions(State.PROVEN));
        titles(
                body,
                KEPT_BY_TITLE,
                "So far",
                standing.questions(State.KEPT).stream()
                        .filter(question -> !hasItsOwnWords(question))
                        .toList());
        standing.questions(State.KEPT).stream()
                .filter(StandingAnswer::hasItsOwnWords)
                .forEach(question -> body.add(new Paragraph(KEPT, "So far", said(question))));
        standing.questions(State.NEEDED).stream()
                .filter(question -> question.clocks().isEmpty())
                .forEach(question -> body.add(new Paragraph(OPEN, "Needed", said(question))));
        for (RunningClock clock : standing.clocks()) {
            body.add(new Paragraph(OPEN, "By when", clock.words()));
        }
        standing.questions(State.UNPROVABLE)
                .forEach(question -> body.add(new Paragraph(UNPROVEN, "Unproven", said(question))));
        standing.questions(State.LOST).forEach(question -> body.add(new Paragraph(LOST, "Lost", said(question))));
        for (int i = 0; i < remedies.size(); i++) {
            String place = remedies.size() > 1 ? (i + 1) + " of " + remedies.size() + ": " : "";
            String source = remedies.get(i)
                    .citation()
                    .map(Citation::text)
                    .map(text -> " (" + text + ")")
                    .orElse("");
            body.add(new Paragraph(ALLOWED, "Allowed", place + remedies.get(i).text() + source));
        }
        return body;
    }

    private static void titles(List<Paragraph> body, int rank, String label, List<StandingQuestion> questions) {
        if (!questions.isEmpty()) {
            body.add(new Paragraph(
                    rank, label, questions.stream().map(StandingQuestion::title).collect(Collectors.joining("; "))));
        }
    }

    /** Whether there is more to say of a question that is kept than that it is: a margin, a last day, a row just met. */
    private static boolean hasItsOwnWords(StandingQuestion question) {
        return question.check().isEmpty()
                || question.key().startsWith("hot-hold")
                || question.key().startsWith("cold-store")
                || question.key().equals("lethality");
    }

    private static String said(StandingQuestion question) {
        return question.title() + ": " + question.words();
    }
}
