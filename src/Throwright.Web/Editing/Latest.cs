namespace Throwright.Web.Editing;

/// <summary>
/// Works out answers to questions that come faster than they can be answered: one at a time, away from the window's own
/// thread, and of those that came in the meantime only the last. So what is shown is never more than two answers behind the hand.
/// </summary>
/// <param name="overtakes">A newer question stops the work on an older one, for work that takes long.</param>
public sealed class Latest<TQuestion, TAnswer>(Func<TQuestion, CancellationToken, TAnswer> work, Func<TQuestion, TAnswer, Task> show, bool overtakes = false) : IDisposable
    where TQuestion : class
{
    private readonly Lock gate = new();
    private readonly CancellationTokenSource end = new();
    private TQuestion? wanted;
    private bool isWorking;
    private CancellationTokenSource? current;

    /// <summary>Questions that were passed over.</summary>
    public int PassedOver { get; private set; }

    public void Want(TQuestion question)
    {
        lock (gate)
        {
            if (wanted is not null)
                PassedOver++;
            wanted = question;
            if (overtakes)
                current?.Cancel();
            if (isWorking)
                return;
            isWorking = true;
        }

        _ = Task.Run(Work);
    }

    /// <summary>Nothing is asked any more; work under way is stopped where a newer question would stop it.</summary>
    public void Drop()
    {
        lock (gate)
        {
            wanted = null;
            if (overtakes)
                current?.Cancel();
        }
    }

    public void Dispose()
    {
        end.Cancel();
        end.Dispose();
    }

    private async Task Work()
    {
        CancellationToken stop;
        try
        {
            stop = end.Token;
        }
        catch (ObjectDisposedException)
        {
            return;
        }

        while (true)
        {
            TQuestion question;
            lock (gate)
            {
                if (wanted is null || stop.IsCancellationRequested)
                {
                    isWorking = false;
                    return;
                }

                (question, wanted) = (wanted, null);
                current = CancellationTokenSource.CreateLinkedTokenSource(stop);
            }

            try
            {
                await show(question, work(question, current.Token)).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                // Overtaken by a newer question, which is next; or the end, which the next round sees.
            }
            catch (ObjectDisposedException)
            {
                lock (gate)
                    isWorking = false;
                return;
            }
            finally
            {
                lock (gate)
                {
                    current.Dispose();
                    current = null;
                }
            }
        }
    }
}
