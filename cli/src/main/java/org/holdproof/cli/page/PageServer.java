package org.holdproof.cli.page;

import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.EofException;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/**
 * Serves the page to this machine alone: bound to the loopback address, under a random token. What is handed in lies in
 * a temporary folder of its owner's until the server is closed; only what somebody asks to keep goes into the kitchen
 * folder.
 */
public final class PageServer implements AutoCloseable {
    private static final int MOST_THREADS = 80;
    /** A connection on which nothing moves for so long was cut. */
    private static final long IDLE_MILLIS = 30_000;

    private static final int SOME_FREE_PORT = 0;

    /** Everything comes from here; nothing is set in a frame, nothing is sent elsewhere. */
    private static final String POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                    + " connect-src 'self'; form-action 'none'; base-uri 'none'; frame-ancestors 'none'";

    private final Server server;
    private final Shelf shelf;
    private final URI address;

    private PageServer(Server server, Shelf shelf, URI address) {
        this.server = server;
        this.shelf = shelf;
        this.address = address;
    }

    /**
     * Starts to serve.
     *
     * @throws IOException if no port is free or no temporary folder can be made
     */
    public static PageServer start(PageSettings settings) throws IOException {
        QueuedThreadPool threads = new QueuedThreadPool(MOST_THREADS);
        threads.setName("page");
        threads.setDaemon(true);
        Server server = new Server(threads);
        HttpConfiguration http = new HttpConfiguration();
        http.setSendServerVersion(false);
        http.setSendDateHeader(false);
        ServerConnector connector = new ServerConnector(server, 1, 1, new HttpConnectionFactory(http));
        connector.setHost(InetAddress.getLoopbackAddress().getHostAddress());
        connector.setPort(settings.port().orElse(SOME_FREE_PORT));
        connector.setIdleTimeout(IDLE_MILLIS);
        server.addConnector(connector);
        server.setErrorHandler(new PlainErrors());
        connector.open();
        Gate gate = new Gate(connector.getLocalPort());
        Shelf shelf = Shelf.open(settings.largestFile());
        server.setHandler(new Door(gate, new Routes(shelf, settings)));
        try {
            server.start();
        } catch (Exception failed) {
            shelf.close();
            throw new IOException("the page cannot be served: " + failed.getMessage(), failed);
        }
        URI address = URI.create("http://127.0.0.1:" + connector.getLocalPort() + gate.root());
        return new PageServer(server, shelf, address);
    }

    /** Where the page is, token included. */
    public URI address() {
        return address;
    }

    /** Waits until the server is closed. */
    public void join() throws InterruptedException {
        server.join();
    }

    @Override
    public void close() throws IOException {
        try {
            server.stop();
        } catch (Exception failed) {
            throw new IOException("the page cannot be closed: " + failed.getMessage(), failed);
        } finally {
            shelf.close();
        }
    }

    /** Looks at who asks, has the routes answer, and writes the answer. */
    private static final class Door extends Handler.Abstract {
        private final Gate gate;
        private final Routes routes;

        Door(Gate gate, Routes routes) {
            this.gate = gate;
            this.routes = routes;
        }

        @Override
        public boolean handle(Request request, Response response, Callback callback) {
            Optional<String> place = gate.admitted(
                    field(request, HttpHeader.HOST).orElse(""),
                    Request.getPathInContext(request),
                    request.getMethod(),
                    field(request, HttpHeader.ORIGIN),
                    Optional.ofNullable(request.getHeaders().get("Sec-Fetch-Site")));
            Reply reply = place.isEmpty()
                    ? Reply.words(404, "Nothing here. Use the address that Holdproof printed.")
                    : answer(request, place.get());
            write(reply, request.getMethod().equals("HEAD"), response, callback);
            return true;
        }

        // Whatever fails, the person gets words and the next request is served.
        @SuppressWarnings("CatchAndPrintStackTrace")
        private Reply answer(Request request, String place) {
            try {
                return routes.answer(request, place);
            } catch (Fault fault) {
                return fault.reply();
            } catch (EofException cut) {
                return Fault.badRequest("The connection was cut.").reply();
            } catch (IOException failed) {
                return Fault.disk("It could not be read or kept: " + Faults.words(failed))
                        .reply();
            } catch (OutOfMemoryError large) {
                return Fault.tooLarge("This is more than the memory of this computer's Java holds.")
                        .reply();
            } catch (RuntimeException | StackOverflowError internal) {
                return Faults.internal(internal).reply();
            }
        }

        private static Optional<String> field(Request request, HttpHeader header) {
            return Optional.ofNullable(request.getHeaders().get(header));
        }

        private static void write(Reply reply, boolean headOnly, Response response, Callback callback) {
            response.setStatus(reply.status());
            HttpFields.Mutable fields = response.getHeaders();
            fields.put(HttpHeader.CONTENT_TYPE, reply.type());
            fields.put(HttpHeader.CONTENT_LENGTH, reply.body().length);
            safe(fields);
            reply.headers().forEach(fields::put);
            response.write(true, headOnly ? ByteBuffer.allocate(0) : ByteBuffer.wrap(reply.body()), callback);
        }
    }

    private static void safe(HttpFields.Mutable fields) {
        fields.put("Content-Security-Policy", POLICY);
        fields.put("X-Content-Type-Options", "nosniff");
        fields.put("Referrer-Policy", "no-referrer");
        fields.put("Cross-Origin-Opener-Policy", "same-origin");
        fields.put("Cross-Origin-Resource-Policy", "same-origin");
        fields.put(HttpHeader.CACHE_CONTROL, "no-store");
    }

    /** What is wrong with a request before anybody here has read it, in a line of plain text. */
    private static final class PlainErrors extends ErrorHandler {
        @Override
        public boolean handle(Request request, Response response, Callback callback) {
            safe(response.getHeaders());
            response.getHeaders().put(HttpHeader.CONTENT_TYPE, "text/plain; charset=utf-8");
            response.write(
                    true,
                    ByteBuffer.wrap("This request cannot be answered.\n".getBytes(StandardCharsets.UTF_8)),
                    callback);
            return true;
        }
    }
}
