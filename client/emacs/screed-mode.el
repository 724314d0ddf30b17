;;; screed-mode.el --- Plans for building a small house -*- lexical-binding: t -*-

;;; Commentary:
;; A mode for .screed files and the language server for it, through eglot.
;; In the init file:  (load "/path/to/screed-mode.el")  and, to start the server
;; with every plan:   (add-hook 'screed-mode-hook #'eglot-ensure)

;;; Code:

(defvar screed-mode-syntax-table
  (let ((table (make-syntax-table)))
    ;; A quote is an inch mark as often as it opens a text, so it cannot pair.
    (modify-syntax-entry ?\" "." table)
    (modify-syntax-entry ?- "_" table)
    table))

(defvar screed-font-lock-keywords
  '(("\\(?:^\\|[ \t]\\)\\(#\\(?:[^0-9\n].*\\)?\\)$" 1 font-lock-comment-face t)
    ("\\(?:^\\|[^0-9½¼¾\n]\\)\\(\"\\(?:[^\"\n]\\|\"\"\\)*\"\\)" 1 font-lock-string-face)
    ("^[ \t]*\\([A-Za-z][A-Za-z0-9-]*\\)" 1 font-lock-keyword-face)))

;;;###autoload
(define-derived-mode screed-mode prog-mode "Screed"
  "A mode for house-build plans."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#[ \t]+")
  (setq-local comment-end "")
  (setq-local indent-tabs-mode nil)
  (setq-local tab-width 2)
  (setq-local indent-line-function #'indent-relative)
  (setq-local font-lock-defaults '(screed-font-lock-keywords t)))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.screed\\'" . screed-mode))

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '(screed-mode "screed-language-server" "--stdio")))

(provide 'screed-mode)
;;; screed-mode.el ends here
