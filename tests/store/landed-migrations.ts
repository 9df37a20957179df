/**
 * SHA-256 of every migration that has landed. A landed migration is never edited, since databases out
 * there have run it: add another, and its line here.
 */
export const LANDED_MIGRATIONS: Readonly<Record<string, string>> = {
  '0000_functions.sql': 'f2d66ce52b7e2be471e0fb3905b0311fda008129c941c05a60b2d4548dcd1dad',
  '0001_tables.sql': 'c0141e2ca6c86ffeaecf53506dea88e46f4aa67f63eb8dd6349756bc18bd257d',
  '0002_rules.sql': 'f77cbe4549cf8f18aebcf622d2eba908c87ce350a37864a4200c36caeb1e7ed1',
  '0003_history.sql': '449b8b64cb67220e9aa2b69b6cac4b3f8f88ef3a70d588433add2fd8f5ac23aa',
  '0004_installations.sql': '70d2958f79caa811917f057be85a94ee11fdfca12daa753dba935fb555b49903',
  '0005_privacy.sql': '8304c55e6bc061a63abc604ce038a4767bc3d49c99f78217b26efe8f952e4e6e',
  '0006_latest_past.sql': '757ddaa597c62abced5569cd693d8419ae33efd3a5209c6ea88e0ef0cc7356ac',
  '0007_past_changes.sql': '166ab5dd1e2bbd1fcee76c855da32ce44d49848ac682f8f2f4d3dacabf88e855',
  '0008_codes.sql': '901bbdbfe352bedb36e8025eddc5878b7d01c03ce23462fe32a695c9c3691033',
  '0009_post_kinds.sql': '3803b56a3de2e4acba8a6443825dc57f49eb356799916ef8bceef709104ff480',
  '0010_unreachable.sql': 'b5b18b288dd38881b1c7bfde159f83ee08ffda36c5beb3e84650f4c84cc0ebc2',
  '0011_replaced_messages.sql': '469a54eef0d7d19900a78c88bbcf0f564c04dcbd4b35df1525f672073b79a308',
  '0012_visits.sql': '6dfbdf013d0cca5a98a5704602a1539e01874a5347dd98338e0e2e34e4496649',
  '0013_team_moved.sql': '9f47dac52d6e313d5cfe877c5fa062aa56c87c8c9358975ed51132c20a10ebf6',
  '0014_card_links.sql': 'a0b87a2efa2401a62261b2f91143788d4540ef7e4bc92c1fcaa99a38c2c09ab1',
  '0015_days_off.sql': '16f75619819f902a5c0fdd131c304b17d192177a67aef9e02c1a61bf4739cf65',
  '0016_card_owner_changes.sql': '48a7346052dbcfd58ea3e73ce19e36cfe6c1dd052b42cf9f3eb638782226974d',
  '0017_card_blocks.sql': '549ed1ccdc6b0a7642028f696f42081c9ff5e482fede3c1cddda4a625b216786',
  '0018_cards_given.sql': '598b32472e85102ed2f0f0e0c94c4830591b17cfe549037585a76a8378dab133',
  '0019_verdict_thread.sql': '210592ff524059a06273d09bd046fabd63312f7e95477217947f5bd8488f6648',
  '0020_plan_changes.sql': 'f6e5a890247812955a517a27f6674947d911fc9098572aacd230d72e528990fe',
  '0021_blocked_posts.sql': 'a65193a76c7f3214214af600cf0ea71657a5b3e595c9ec2e58c87e8472593b35',
  '0022_digests.sql': '49edcfc1cf7053658eb4cb57be3d9789c62858c42442038065e97bd203eb8686',
  '0023_marks_off.sql': '9752b999d04fedfbf735d78cccd81fc7ff3e6eec76f977eaf6d4997a63e15529',
  '0024_fair_measures.sql': '456ff24c34e37f9a88e635119d290689f29350087ae53bb5a65f3761f84e63cd',
  '0025_goal_questions.sql': 'dd433c07ce277fe7fc293eb423968da8a8294df4fad77453f2088a5be41bb43f',
  '0026_weekly_line.sql': 'e7653f587b52a14801c8d9adfa11267498e03c986d89cd7cd9155b09e2e37763',
  '0027_baseline_rule.sql': 'a8dbbaaf69ac7ec7388320be06eba6ce4d0ec0a3e522cef58ba17b5762d37112',
};
