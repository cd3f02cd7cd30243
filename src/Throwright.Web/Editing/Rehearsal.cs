using System.Diagnostics;

namespace Throwright.Web.Editing;

/// <summary>Goes through the work of a change before a hand asks for it, once for each program.</summary>
/// <remarks>
/// .NET compiles code anew, several times faster, when it has run some thirty times. Without this the first hundred changes would take
/// three times as long as all later ones. It runs while a person reads the page, with the least claim on the machine.
/// </remarks>
internal static class Rehearsal
{
    private const int Rounds = 60;
    private static readonly TimeSpan Most = TimeSpan.FromSeconds(4);
    private static int begun;

    /// <param name="round">Works out and draws, and keeps nothing. False: there is nothing to rehearse with.</param>
    public static void Once(Func<bool> round)
    {
        if (Interlocked.Exchange(ref begun, 1) != 0)
            return;
        new Thread(Run) { IsBackground = true, Priority = ThreadPriority.Lowest, Name = "rehearsal" }.Start();

        void Run()
        {
            var watch = Stopwatch.StartNew();
            try
            {
                for (var i = 0; i < Rounds && watch.Elapsed < Most && round(); i++)
                    Thread.Sleep(5);
            }
            catch (Exception e) when (e is OperationCanceledException or ObjectDisposedException)
            {
                // The window was closed; what was rehearsed so far still serves.
            }
        }
    }
}
