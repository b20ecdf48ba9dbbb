using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace PileController.Tests.Support;

/// <summary>Keeps what goes to the log as a warning or worse, with its traces.</summary>
internal sealed class LogLines : ILoggerProvider, ILogger
{
    private readonly ConcurrentQueue<string> _lines = new();

    public IReadOnlyCollection<string> Lines => _lines;

    public ILogger CreateLogger(string categoryName) => this;

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Warning;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        if (IsEnabled(logLevel))
        {
            _lines.Enqueue($"{formatter(state, exception)} {exception}");
        }
    }

    public void Dispose()
    {
    }
}
