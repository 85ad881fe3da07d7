package org.holdproof.report.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.holdproof.core.rules.Citation;

/** The sources of one page, numbered in the order they are first used. */
final class References {
    private final List<String> texts = new ArrayList<>();

    /** The numbers of some sources: {@code [2, 5]}. */
    String marks(List<Citation> citations) {
        TreeSet<Integer> numbers = new TreeSet<>();
        for (Citation citation : citations) {
            String text = citation.text();
            if (!texts.contains(text)) {
                texts.add(text);
            }
            numbers.add(texts.indexOf(text) + 1);
        }
        return numbers.stream().map(String::valueOf).collect(Collectors.joining(",\u00a0", "[", "]"));
    }

    /** A text with the numbers of its sources after it. */
    String after(String text, List<Citation> citations) {
        return text + " " + marks(citations);
    }

    /** Every source used so far, as one paragraph a source. */
    List<String> list() {
        List<String> list = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            list.add("[" + (i + 1) + "] " + texts.get(i));
        }
        return list;
    }
}
