package org.ebbwatch.web.problem;

import io.micronaut.core.convert.exceptions.ConversionErrorException;
import io.micronaut.core.type.Argument;
import io.micronaut.http.HttpHeaders;
import io.micronaut.http.HttpRequest;
import io.micronaut.http.HttpResponse;
import io.micronaut.http.HttpStatus;
import io.micronaut.http.MediaType;
import io.micronaut.http.MutableHttpResponse;
import io.micronaut.http.server.exceptions.ExceptionHandler;
import io.micronaut.http.server.exceptions.response.ErrorContext;
import io.micronaut.http.server.exceptions.response.ErrorResponseProcessor;
import jakarta.inject.Singleton;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;

/** Turns whatever goes wrong with a request into problem details. What is wrong inside the service goes to its log only. */
@Singleton
final class ProblemResponses implements ErrorResponseProcessor<Problem> {
    private static final MediaType PROBLEM = MediaType.of("application/problem+json");

    @Override
    public MutableHttpResponse<Problem> processResponse(ErrorContext context, MutableHttpResponse<?> response) {
        HttpStatus status = HttpStatus.valueOf(response.code());
        String path = context.getRequest().getPath();
        ProblemKind kind = ProblemKind.of(status);
        Problem problem = kind == null ? Problem.of(status, path) : Problem.of(kind, detail(context, kind), path);
        return response.body(problem).contentType(PROBLEM);
    }

    private static String detail(ErrorContext context, ProblemKind kind) {
        String said =
                switch (kind) {
                    case BAD_PARAMETER ->
                        context.getRootCause()
                                .map(ProblemResponses::badParameter)
                                .orElse("The request cannot be understood.");
                    case WRONG_METHOD ->
                        context.getRequest().getMethodName() + " cannot be used for "
                                + context.getRequest().getPath() + '.';
                    case UNKNOWN_PATH -> context.getRequest().getPath() + " is not known.";
                    default -> kind.title() + '.';
                };
        return said + ' ' + kind.advice();
    }

    private static String badParameter(Throwable cause) {
        if (cause instanceof ConversionErrorException conversion) {
            Argument<?> argument = conversion.getArgument();
            Optional<Object> given = conversion.getConversionError().getOriginalValue();
            return argument.getName()
                    + given.map(it -> " cannot be \"" + shortened(it) + '"').orElse(" cannot be read") + "; it takes "
                    + taken(argument.getType()) + '.';
        }
        return "The request cannot be understood.";
    }

    private static String taken(Class<?> type) {
        if (type.isEnum()) {
            return Arrays.stream(type.getEnumConstants()).map(Object::toString).collect(Collectors.joining(", "));
        }
        if (type == UUID.class) {
            return "an identifier as /api/v1/passages gives it";
        }
        return type == Double.class ? "a number" : "a whole number";
    }

    private static String shortened(Object given) {
        String text = given.toString();
        return text.length() <= 60 ? text : text.substring(0, 60) + "...";
    }

    /** Answers a refusal that was thrown on purpose. */
    @Singleton
    static final class Refusals implements ExceptionHandler<ProblemException, HttpResponse<Problem>> {
        @Override
        @SuppressWarnings("rawtypes")
        public HttpResponse<Problem> handle(HttpRequest request, ProblemException refused) {
            ProblemKind kind = refused.kind();
            String detail = refused.getMessage() + ' ' + kind.advice();
            MutableHttpResponse<Problem> response = HttpResponse.<Problem>status(kind.status())
                    .body(refused.complete(Problem.of(kind, detail, request.getPath())))
                    .contentType(PROBLEM);
            return kind == ProblemKind.NO_TOKEN ? response.header(HttpHeaders.WWW_AUTHENTICATE, "Bearer") : response;
        }
    }
}
