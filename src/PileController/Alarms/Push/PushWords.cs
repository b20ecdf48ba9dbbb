using System.Text;

namespace PileController.Alarms.Push;

/// <summary>A message in words.</summary>
internal static class PushWords
{
    /// <summary>The line that is read first: the worst of it.</summary>
    public static string Subject(PushMessage message)
    {
        PushItem[] raised = [.. message.Alarms.Where(one => one.Event != "returned")];
        if (raised.Length == 0)
        {
            return $"{message.Holding}: over: {message.Alarms[^1].Name}{Others(message.Alarms.Count - 1 + message.More)}";
        }

        PushItem worst = raised.OrderByDescending(one => Enum.Parse<AlarmPriority>(one.Priority, ignoreCase: true)).First();
        return $"{message.Holding}: {worst.Priority.ToUpperInvariant()}: {worst.Name}{Others(message.Alarms.Count - 1 + message.More)}";
    }

    /// <summary>All of it.</summary>
    public static string Text(PushMessage message)
    {
        StringBuilder text = new();
        foreach (PushItem one in message.Alarms)
        {
            text.AppendLine($"{one.AtUtc:yyyy-MM-dd HH:mm} UTC: {Deed(one.Event)} ({one.Priority}{(one.FirstUp ? ", first of its group" : "")}): {one.Name}.");
            if (one.Detail is { } detail)
            {
                text.AppendLine($"  Now: {detail}");
            }

            if (one.Event != "returned")
            {
                text.AppendLine($"  Cause: {one.Cause}").AppendLine($"  What comes of it: {one.Consequence}").AppendLine($"  What to do: {one.Action}");
            }

            text.AppendLine();
        }

        if (message.More > 0)
        {
            text.AppendLine($"And {message.More} more; the page lists them all.").AppendLine();
        }

        return text.AppendLine("Local codes and licensed trades decide.").ToString();
    }

    private static string Others(int count) => count > 0 ? $" (and {count} more)" : "";

    private static string Deed(string kind) => kind switch
    {
        "returned" => "over",
        "reminded" => "still standing",
        "shelfEnded" => "off the shelf and still standing",
        _ => "alarm",
    };
}
