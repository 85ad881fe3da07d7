package org.holdproof.cli.page;

import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.TreeMap;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.holdproof.core.rules.RuleLibrary;

/** Which question goes to whom. */
final class Routes {
    /** Answers one question of the page. */
    @FunctionalInterface
    private interface Answer {
        Reply to(Asked asked) throws Fault, IOException;
    }

    private final Shelf shelf;
    private final StaticFiles files = new StaticFiles();
    private final Map<String, Answer> answers = new TreeMap<>();

    Routes(Shelf shelf, PageSettings settings) {
        this.shelf = shelf;
        RuleLibrary library = RuleLibrary.builtIn();
        Logs logs = new Logs(shelf);
        Kitchen kitchen = new Kitchen(settings.kitchen());
        Cooks cooks = new Cooks(logs, library);
        answers.put("start", asked -> Reply.json(new StartAnswer(library, kitchen, settings).json()));
        answers.put("read", asked -> Reply.json(new ReadAnswer(logs).json(asked)));
        answers.put("readings", asked -> Reply.json(new ReadAnswer(logs).between(asked)));
        answers.put("propose", asked -> Reply.json(new ProposeAnswer(logs).json(asked)));
        answers.put("record", asked -> Reply.json(new RecordAnswer(library).json(asked)));
        answers.put("limits", asked -> Reply.json(new LimitsAnswer(library).json(asked)));
        answers.put("judge", asked -> new JudgeAnswer(cooks.judged(asked)).reply());
        answers.put("figures", asked -> cooks.judged(asked).figures());
        answers.put("report", asked -> cooks.judged(asked).unsealedReport());
        answers.put("seal", asked -> Reply.json(new SealAnswer(cooks, kitchen).json(asked)));
        answers.put("recheck", asked -> Reply.json(new RecheckAnswer(shelf, library).json(asked)));
        answers.put("inside", asked -> new RecheckAnswer(shelf, library).inside(asked));
        answers.put("grown", asked -> Reply.json(new GrowingLog(shelf, settings.log()).json()));
        answers.put("status", asked -> Reply.json(new StatusAnswer(cooks, library).json(asked)));
        answers.put("plan", asked -> Reply.json(new PlanAnswer(library).json(asked)));
        answers.put("lesson", asked -> Reply.json(new LessonAnswer(library).json(asked)));
        answers.put("kitchen", asked -> Reply.json(kitchen.keep(asked)));
        answers.put("key", asked -> Reply.json(kitchen.makeKey(asked)));
        answers.put("batches", asked -> Reply.json(kitchen.batches()));
        answers.put("open", asked -> Reply.json(kitchen.open(asked, shelf)));
        answers.put("demo", asked -> Reply.json(new DemoAnswer(shelf).json(asked)));
    }

    Reply answer(Request request, String place) throws Fault, IOException {
        boolean reads = request.getMethod().equals("GET") || request.getMethod().equals("HEAD");
        if (reads) {
            Optional<Reply> file = files.at(place);
            return file.orElseThrow(() -> Fault.missing("There is nothing at this address."));
        }
        if (!request.getMethod().equals("POST") || !place.startsWith("ask/")) {
            throw Fault.missing("There is nothing at this address.");
        }
        String question = place.substring("ask/".length());
        if (question.equals("file")) {
            return take(request);
        }
        Answer answer = answers.get(question);
        if (answer == null) {
            throw Fault.missing("There is nothing at this address.");
        }
        return answer.to(Asked.in(request));
    }

    private Reply take(Request request) throws Fault, IOException {
        OptionalLong declared = length(request);
        try (InputStream in = Request.asInputStream(request)) {
            Shelf.Item item = shelf.take(in, declared.orElse(-1));
            return Reply.json(FileKinds.describe(shelf.find(item.id()), item));
        }
    }

    private static OptionalLong length(Request request) {
        long length = request.getHeaders().getLongField(HttpHeader.CONTENT_LENGTH);
        return length < 0 ? OptionalLong.empty() : OptionalLong.of(length);
    }
}
