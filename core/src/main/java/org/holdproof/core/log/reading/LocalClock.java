package org.holdproof.core.log.reading;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.holdproof.core.log.LogFault;

/**
 * Turns a local clock into instants.
 *
 * <p>In the hour that comes twice when summer time ends, the clock counts with summer time until it steps back, then
 * with winter time. A log that starts in that hour, or enters it after more than half an hour without a row, and never
 * steps back, does not say which of the two it means: it is refused. So is a local time that never was, in the hour left
 * out when summer time starts: such a clock was not put forward, and every time after it would be an hour out.
 */
final class LocalClock {
    private static final long HALF_HOUR = 1_800_000;
    private static final long SMALLEST_STEP_BACK = 300_000;
    private static final DateTimeFormatter PRINTED = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    private final Columns columns;
    private final ZoneId zone;
    private final ZoneRules rules;
    private final FaultLedger ledger;
    private final int column;

    private long plainFrom = Long.MAX_VALUE;
    private long plainTo = Long.MIN_VALUE;
    private long offset;
    private Optional<ZoneOffsetTransition> fold = Optional.empty();
    private boolean secondPass;
    private boolean settled;

    /** @param column the clock's column, counted from 1 */
    LocalClock(Columns columns, ZoneId zone, FaultLedger ledger, int column) {
        this.columns = columns;
        this.zone = zone;
        this.rules = zone.getRules();
        this.ledger = ledger;
        this.column = column;
    }

    /** Replaces each row's local time, in milliseconds since 1970-01-01T00:00, by its instant. */
    void toInstants() {
        long before = 0;
        long offsetBefore = 0;
        for (int row = 0; row < columns.rows(); row++) {
            long local = columns.clock(row);
            if (local < plainFrom || local >= plainTo) {
                find(row, local, before);
            }
            if (row > 0 && offset != offsetBefore) {
                report(row, offset > offsetBefore);
            }
            columns.setClock(row, local - offset);
            before = local;
            offsetBefore = offset;
        }
        leaveFold(columns.rows() - 1);
    }

    private void find(int row, long local, long before) {
        LocalDateTime time = LocalDateTime.ofEpochSecond(
                Math.floorDiv(local, 1000L), Math.floorMod(local, 1000) * 1_000_000, ZoneOffset.UTC);
        List<ZoneOffset> offsets = rules.getValidOffsets(time);
        if (offsets.isEmpty()) {
            throw new Refusal(
                    columns.line(row),
                    column,
                    "the local time " + PRINTED.format(time) + ", which never was in " + zone.getId()
                            + " (the clocks went forward over it)",
                    "a clock that follows daylight saving",
                    "Export with the offset from UTC; or, if the logger keeps one time all year, give its fixed offset"
                            + " such as \"+01:00\" as \"kitchen.timeZone\" in the batch record.");
        }
        if (offsets.size() == 1) {
            leaveFold(row);
            offset = offsets.get(0).getTotalSeconds() * 1000L;
            plainSpan(Instant.ofEpochMilli(local - offset));
            return;
        }
        ZoneOffsetTransition here = rules.getTransition(time);
        plainFrom = Long.MAX_VALUE;
        plainTo = Long.MIN_VALUE;
        boolean sameFold = fold.isPresent() && fold.get().equals(here);
        if (!sameFold) {
            enterFold(row, local, before, here);
        } else if (!secondPass && stepsBack(row, local, before, here)) {
            secondPass = true;
            settled = true;
        }
        offset = (secondPass ? here.getOffsetAfter() : here.getOffsetBefore()).getTotalSeconds() * 1000L;
    }

    private void enterFold(int row, long local, long before, ZoneOffsetTransition here) {
        leaveFold(row);
        fold = Optional.of(here);
        boolean fromBehind = row > 0 && before >= millis(here.getDateTimeBefore());
        secondPass = fromBehind;
        settled = fromBehind || (row > 0 && local - before <= HALF_HOUR);
    }

    /** A step back by minutes is the change; one by seconds is the logger setting its clock right. */
    private boolean stepsBack(int row, long local, long before, ZoneOffsetTransition here) {
        long step = before - local;
        if (step <= 0) {
            return false;
        }
        long length = -here.getDuration().toMillis();
        long usual = row > 1 ? before - (columns.clock(row - 2) + offset) : 0;
        return step > SMALLEST_STEP_BACK || length - step <= 2 * usual;
    }

    private void leaveFold(int row) {
        if (fold.isEmpty() || row < 0) {
            return;
        }
        if (!settled) {
            throw new Refusal(
                    columns.line(row),
                    column,
                    "local times in the hour from " + PRINTED.format(fold.get().getDateTimeAfter())
                            + ", which came twice in " + zone.getId(),
                    "a log that shows which of the two it means",
                    "Export with the offset from UTC.");
        }
        if (!secondPass) {
            ledger.add(
                    LogFault.Kind.CLOCK_CHANGE,
                    "",
                    columns.line(row),
                    columns.line(row),
                    "the clock did not step back in the hour from "
                            + PRINTED.format(fold.get().getDateTimeAfter()) + ", which comes twice in " + zone.getId()
                            + "; its times there are counted as the first pass");
        }
        fold = Optional.empty();
        secondPass = false;
        settled = false;
    }

    private void report(int row, boolean forward) {
        ledger.add(
                LogFault.Kind.CLOCK_CHANGE,
                "",
                columns.line(row - 1),
                columns.line(row),
                "daylight saving in " + zone.getId() + ": the clock was set " + (forward ? "forward" : "back")
                        + "; times from here on are UTC"
                        + ZoneOffset.ofTotalSeconds((int) (offset / 1000))
                                .getId()
                                .replace("Z", "+00:00"));
    }

    /** The span of local times around an instant in which its offset holds and no other does. */
    private void plainSpan(Instant instant) {
        Optional<ZoneOffsetTransition> last = Optional.ofNullable(rules.previousTransition(instant.plusMillis(1)));
        Optional<ZoneOffsetTransition> next = Optional.ofNullable(rules.nextTransition(instant));
        plainFrom = last.map(t -> Math.max(millis(t.getDateTimeBefore()), millis(t.getDateTimeAfter())))
                .orElse(Long.MIN_VALUE);
        plainTo = next.map(t -> Math.min(millis(t.getDateTimeBefore()), millis(t.getDateTimeAfter())))
                .orElse(Long.MAX_VALUE);
    }

    private static long millis(LocalDateTime time) {
        return time.toEpochSecond(ZoneOffset.UTC) * 1000;
    }
}
