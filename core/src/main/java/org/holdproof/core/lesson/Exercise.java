package org.holdproof.core.lesson;

import java.util.List;
import org.holdproof.core.log.Trace;

/**
 * A small simulated log with questions, and the answers the lesson's own arithmetic gives.
 *
 * @param situation what happened, in a sentence or two
 * @param log the core's readings, to a tenth of a degree
 * @param answers one a question
 */
public record Exercise(String title, String situation, Trace log, List<String> questions, List<String> answers) {
    /** @throws IllegalArgumentException if a question has no answer or an answer no question */
    public Exercise {
        questions = List.copyOf(questions);
        answers = List.copyOf(answers);
        if (questions.size() != answers.size()) {
            throw new IllegalArgumentException(questions.size() + " questions, " + answers.size() + " answers");
        }
    }
}
