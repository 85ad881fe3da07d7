package org.holdproof.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.holdproof.cli.terminal.Terminal;

/** One command run in this process, with what it said. */
record Desk(int exitCode, String out, String err) {
    static Desk run(String... arguments) {
        return run(Map.of(), arguments);
    }

    static Desk run(Map<String, String> environment, String... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        Terminal terminal = new Terminal(
                new PrintWriter(out), new PrintWriter(err), true, false, false, Optional.empty(), environment);
        int exitCode = Holdproof.run(terminal, arguments);
        terminal.out().flush();
        terminal.err().flush();
        return new Desk(exitCode, out.toString(), err.toString());
    }

    List<String> outLines() {
        return out.lines().toList();
    }
}
