using Microsoft.AspNetCore.Http.HttpResults;

namespace PileController.Panel;

/// <summary>The answers the panel gives when it does not do what was asked: problem JSON (RFC 9457).</summary>
internal static class Answers
{
    /// <summary>A field that is wrong: which, what was given and what is allowed.</summary>
    public static ProblemHttpResult BadField(FieldFault fault) =>
        TypedResults.Problem(
            detail: $"{fault.Field}: {fault.Given} is not allowed. Allowed: {fault.Allowed}.",
            statusCode: StatusCodes.Status400BadRequest,
            title: "A field is wrong",
            extensions: new Dictionary<string, object?>
            {
                ["field"] = fault.Field,
                ["given"] = fault.Given,
                ["allowed"] = fault.Allowed,
            });

    /// <summary>Anything else refused, with the reason in a sentence.</summary>
    public static ProblemHttpResult Refused(int status, string title, string reason) =>
        TypedResults.Problem(detail: reason, statusCode: status, title: title);
}

/// <summary>What is wrong with one field.</summary>
/// <param name="Field">Its name.</param>
/// <param name="Given">What was given, or "nothing".</param>
/// <param name="Allowed">What is allowed.</param>
internal sealed record FieldFault(string Field, string Given, string Allowed);

/// <summary>Stops an endpoint at a wrong field; turned into a 400 by the endpoint group.</summary>
internal sealed class FieldFaultException(FieldFault fault) : Exception(fault.Field)
{
    /// <summary>What is wrong.</summary>
    public FieldFault Fault { get; } = fault;
}
