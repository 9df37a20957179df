-- In the order in which a closing takes them: a replica of the version before may be at it.
LOCK TABLE "loadline"."past_sprints", "loadline"."sprint_results" IN SHARE ROW EXCLUSIVE MODE;--> statement-breakpoint
-- What the version before wrote, with codes in place of its sentences. What is coded already stays as it is. The queries
-- read through these functions too, since the version before may go on writing for a while.
CREATE FUNCTION "loadline"."coded_ratios"(ratios jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE PARALLEL SAFE AS $$
  SELECT CASE WHEN jsonb_path_exists(ratios, '$.*.undefined ? (@ like_regex " " || @.code == "not-imported")') THEN (
    SELECT jsonb_object_agg(ratio.key,
      -- A sentence that no version is known to have written stays, and is shown as it was posted.
      CASE WHEN reason.code IS NULL THEN ratio.value ELSE jsonb_build_object('undefined', reason.code) END)
    FROM jsonb_each(ratios) AS ratio
    LEFT JOIN (VALUES
      ('There was no commitment.', 'no-commitment'),
      ('The sprint held no work.', 'no-load'),
      ('No card was finished.', 'no-card-finished'),
      ('No work was reported.', 'no-work-reported'),
      ('There is no baseline sprint yet.', 'no-baseline'),
      ('The import doesn’t hold the cards.', 'cards-not-imported'),
      ('The import doesn’t say how much of the commitment was finished.', 'finished-commitment-not-imported'),
      ('The import doesn’t say how much was pulled in.', 'pulled-in-work-not-imported'),
      ('The import doesn’t say how much surprise work there was.', 'surprise-work-not-imported'),
      ('The import doesn’t say how much was pulled in, or how much surprise work there was.', 'load-not-imported'),
      ('The import doesn’t say how much was finished, or how much was worked.', 'work-not-imported'),
      ('{"code": "not-imported", "what": "cards"}', 'cards-not-imported'),
      ('{"code": "not-imported", "what": "finished-commitment"}', 'finished-commitment-not-imported'),
      ('{"code": "not-imported", "what": "pulled-in-work"}', 'pulled-in-work-not-imported'),
      ('{"code": "not-imported", "what": "surprise-work"}', 'surprise-work-not-imported'),
      ('{"code": "not-imported", "what": "load"}', 'load-not-imported'),
      ('{"code": "not-imported", "what": "finished-or-worked"}', 'work-not-imported')
    ) AS reason (kept, code) ON reason.kept = ratio.value ->> 'undefined'
  ) ELSE ratios END
$$;--> statement-breakpoint
-- A note becomes its numbers. Its value is the ratio itself; its threshold is in the failed test or else in the sentence.
-- A note whose numbers aren't all there keeps its sentences, and is shown as it was posted.
CREATE FUNCTION "loadline"."coded_note"(note jsonb, summary jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE PARALLEL SAFE AS $$
  SELECT coalesce(
    CASE note ->> 'id'
      WHEN 'carry-over-repeated' THEN (
        SELECT jsonb_build_object('id', note -> 'id', 'cards', note -> 'cards')
        WHERE jsonb_typeof(note -> 'cards') = 'array')
      WHEN 'answer-rate-low' THEN (
        SELECT jsonb_build_object('id', note -> 'id', 'answers', summary -> 'answers', 'threshold', 0.8, 'value', rate)
        FROM (SELECT (summary #>> '{answers,met}')::float8 / nullif((summary #>> '{answers,prompts}')::float8, 0))
          AS answers (rate)
        WHERE rate IS NOT NULL)
      ELSE (
        SELECT jsonb_build_object('id', note -> 'id', 'value', number.value, 'threshold', number.threshold)
        FROM (VALUES
          ('kept-share-low', 'keptShare'),
          ('surprise-ratio-high', 'surpriseRatio'),
          ('pull-in-ratio-high', 'pullInRatio'),
          ('plan-share-low', 'planShare'),
          ('estimate-accuracy-low', 'estimateAccuracy'),
          ('estimate-accuracy-high', 'estimateAccuracy'),
          ('velocity-growth-first-mark', 'velocityGrowth'),
          ('velocity-growth-long-range-mark', 'velocityGrowth')
        ) AS crossed (id, ratio)
        CROSS JOIN LATERAL (SELECT
          summary -> 'ratios' -> crossed.ratio,
          coalesce(
            (SELECT test -> 'threshold' FROM jsonb_array_elements(summary #> '{verdict,failedTests}') AS test
              WHERE test ->> 'id' = crossed.ratio),
            -- “80%.” and, of an earlier version, “80 %.”
            to_jsonb(trim_scale(substring(note ->> 'crossed' FROM '([0-9.]+) ?%\.$')::numeric / 100)),
            CASE WHEN note ->> 'crossed' LIKE '%right on the mark.' THEN summary -> 'ratios' -> crossed.ratio END)
        ) AS number (value, threshold)
        WHERE crossed.id = note ->> 'id' AND jsonb_typeof(number.value) = 'number' AND number.threshold IS NOT NULL)
    END,
    note || jsonb_build_object('id', 'as-posted', 'postedId', note -> 'id'))
$$;--> statement-breakpoint
-- The coded notes have a key of their own, for the version before expects sentences in “notes”.
CREATE FUNCTION "loadline"."coded_summary"(summary jsonb) RETURNS jsonb LANGUAGE sql IMMUTABLE PARALLEL SAFE AS $$
  SELECT CASE WHEN summary ? 'codedNotes' THEN summary ELSE summary || jsonb_build_object(
    'ratios', "loadline"."coded_ratios"(summary -> 'ratios'),
    'notes', '[]'::jsonb,
    'codedNotes', coalesce((
      SELECT jsonb_agg("loadline"."coded_note"(note.value, summary) ORDER BY note.place)
      FROM jsonb_array_elements(summary -> 'notes') WITH ORDINALITY AS note (value, place)), '[]'::jsonb)) END
$$;--> statement-breakpoint
UPDATE "loadline"."past_sprints" SET "ratios" = "loadline"."coded_ratios"("ratios")
  WHERE "ratios" <> "loadline"."coded_ratios"("ratios");--> statement-breakpoint
ALTER TABLE "loadline"."sprint_results" DISABLE TRIGGER "sprint_results_append_only";--> statement-breakpoint
UPDATE "loadline"."sprint_results" SET "summary" = "loadline"."coded_summary"("summary");--> statement-breakpoint
ALTER TABLE "loadline"."sprint_results" ENABLE TRIGGER "sprint_results_append_only";
