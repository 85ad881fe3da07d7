package org.holdproof.core.log.reading;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import org.holdproof.core.log.LogFault;

/** Collects what is wrong with a log: of each kind all are counted, and the first in the order of lines are listed. */
final class FaultLedger {
    /** How many faults of a kind are listed. */
    static final int LISTED = 100;

    private static final Comparator<LogFault> BY_LINE = Comparator.comparingLong(LogFault::firstLine)
            .thenComparingLong(LogFault::lastLine)
            .thenComparing(LogFault::channel);

    /** Rows one after another with the same fault. */
    private record Run(LogFault.Kind kind, String channel) {}

    private static final class Stretch {
        private final long first;
        private final String detail;
        private long last;
        private long count = 1;

        Stretch(long line, String detail) {
            this.first = line;
            this.last = line;
            this.detail = detail;
        }
    }

    private final Map<LogFault.Kind, PriorityQueue<LogFault>> listed = new EnumMap<>(LogFault.Kind.class);
    private final Map<LogFault.Kind, Long> counts = new EnumMap<>(LogFault.Kind.class);
    private final Map<String, Long> leftOut = new LinkedHashMap<>();
    private final Map<Run, Stretch> open = new HashMap<>();

    /** Counts a row that is left out, by the reason in words. */
    void leaveOut(String reason) {
        leftOut.merge(reason, 1L, Long::sum);
    }

    /** How many rows were left out, by the reason. */
    Map<String, Long> leftOut() {
        return leftOut;
    }

    /** Enters a fault. */
    void add(LogFault.Kind kind, String channel, long oneLine, long otherLine, String detail) {
        counts.merge(kind, 1L, Long::sum);
        PriorityQueue<LogFault> list = listed.computeIfAbsent(kind, any -> new PriorityQueue<>(BY_LINE.reversed()));
        list.add(new LogFault(kind, channel, Math.min(oneLine, otherLine), Math.max(oneLine, otherLine), detail));
        if (list.size() > LISTED) {
            list.remove();
        }
    }

    /** Opens a run of rows with the same fault, or adds a row to it. The detail of a run is that of its first row. */
    void extend(LogFault.Kind kind, String channel, long line, String detail) {
        Stretch stretch = open.get(new Run(kind, channel));
        if (stretch == null) {
            open.put(new Run(kind, channel), new Stretch(line, detail));
        } else {
            stretch.last = line;
            stretch.count++;
        }
    }

    /** Ends a run, if one is open, and enters it. */
    void end(LogFault.Kind kind, String channel) {
        Stretch stretch = open.remove(new Run(kind, channel));
        if (stretch != null) {
            String detail = stretch.count == 1 ? stretch.detail : stretch.detail + " (" + stretch.count + " rows)";
            add(kind, channel, stretch.first, stretch.last, detail);
        }
    }

    /** Ends every run. */
    void endAll() {
        for (Run run : List.copyOf(open.keySet())) {
            end(run.kind(), run.channel());
        }
    }

    /** The faults in the order of their lines; the last listed of a kind says how many more there are. */
    List<LogFault> faults() {
        List<LogFault> all = new ArrayList<>();
        for (Map.Entry<LogFault.Kind, PriorityQueue<LogFault>> entry : listed.entrySet()) {
            List<LogFault> list = new ArrayList<>(entry.getValue());
            list.sort(BY_LINE);
            long more = counts.getOrDefault(entry.getKey(), 0L) - list.size();
            if (more > 0) {
                int last = list.size() - 1;
                LogFault fault = list.get(last);
                list.set(
                        last,
                        new LogFault(
                                fault.kind(),
                                fault.channel(),
                                fault.firstLine(),
                                fault.lastLine(),
                                fault.detail() + "; " + more + " more of this kind are not listed"));
            }
            all.addAll(list);
        }
        all.sort(BY_LINE.thenComparing(LogFault::kind));
        return all;
    }
}
