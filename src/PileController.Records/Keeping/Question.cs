namespace PileController.Records.Keeping;

/// <summary>Something asked of the owner thread.</summary>
internal interface IQuestion
{
    /// <summary>Finds the answer, on the owner thread. Never throws.</summary>
    void Work(RecordKeeper keeper);

    /// <summary>Hands the answer over.</summary>
    void Reply();
}

/// <summary>A question with an answer of one type. What it throws goes to the one who asked.</summary>
internal sealed class Question<T>(Func<RecordKeeper, T> question, CancellationToken cancellation) : IQuestion
{
    private readonly TaskCompletionSource<T> _answer = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private T? _found;
    private Exception? _error;

    /// <summary>The answer to come.</summary>
    public Task<T> Answer => _answer.Task;

    /// <inheritdoc/>
    public void Work(RecordKeeper keeper)
    {
        if (cancellation.IsCancellationRequested)
        {
            _error = new OperationCanceledException(cancellation);
            return;
        }

        try
        {
            _found = question(keeper);
        }
        catch (Exception exception)
        {
            _error = exception;
        }
    }

    /// <inheritdoc/>
    public void Reply()
    {
        if (_error is OperationCanceledException)
        {
            _answer.SetCanceled(cancellation);
        }
        else if (_error is not null)
        {
            _answer.SetException(_error);
        }
        else
        {
            _answer.SetResult(_found!);
        }
    }
}
